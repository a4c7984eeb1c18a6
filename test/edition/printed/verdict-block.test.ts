import { describe, expect, it } from 'vitest'
import { printedSet, printedVerdicts } from '../../../src/edition/printed/verdict-block.ts'
import { certificate, clause, verdict } from '../certificate-fixture.ts'

const [SET] = certificate().criteria as [ReturnType<typeof certificate>['criteria'][number]]

describe('printedVerdicts', () => {
  it('gives the governing verdict in full', () => {
    const pending = verdict([clause()], {
      outcome: 'pending',
      reasons: ['pending; all other clauses met', 'Index, 28 d: test recorded, result due 8 April 2026'],
      release: 'released for shipment, conditional on a density of 2.4 g/cm³',
    })
    expect(printedVerdicts(certificate({ verdicts: [pending] }))).toEqual({
      governing: {
        outcome: 'pending',
        cautions: [],
        headline: 'Pending under VALE 1, edition 1, class N',
        reasons: [
          'Pending; all other clauses met.',
          'Index, 28\u00a0d: test recorded, result due 8 April 2026.',
        ],
        release: 'Released for shipment, conditional on a density of 2.4 g/cm³.',
      },
      others: [],
    })
  })
  it('sets a withdrawal and a trial judgement over the headline', () => {
    const document = certificate({ state: 'withdrawn', criteria: [{ ...SET, trial: true }] })
    expect(printedVerdicts(document).governing?.cautions).toEqual([
      'This certificate is withdrawn; the verdict below no longer applies',
      'Trial judgement, not a statement of conformity',
    ])
  })
  it('never prints what a withdrawn certificate once said as if it stood', () => {
    const { governing, others } = printedVerdicts(
      certificate({ state: 'withdrawn', criteria: [SET, SET], verdicts: [verdict([]), verdict([])] }),
    )
    expect([governing?.headline, others[0]?.headline.text]).toEqual([
      'Withdrawn; was: meets VALE 1, edition 1, class N',
      'Withdrawn; was: meets VALE 1, edition 1, class N',
    ])
  })
  it('gives each other set a line', () => {
    const gone = { ...SET, id: 'gone', designation: 'OLD 1', trial: true }
    const document = certificate({
      criteria: [SET, gone],
      verdicts: [
        verdict([clause()]),
        verdict([], { criterion: 'gone', class: null, outcome: 'does-not-meet' }),
      ],
    })
    expect(printedVerdicts(document).others).toEqual([
      {
        outcome: 'does-not-meet',
        headline: { text: 'Does not meet OLD 1, edition 1', to: { kind: 'criterion', id: 'gone' } },
        trial: true,
      },
    ])
  })
  it('has no verdict where no criterion applies', () => {
    expect(printedVerdicts(certificate({ criteria: [], verdicts: [] }))).toEqual({ others: [] })
    expect(printedSet(certificate({ criteria: [] }))).toBeUndefined()
  })
  it('gives the governing set with its rule and risk', () => {
    expect(printedSet(certificate())).toEqual({
      title: { text: 'Limits of the vale', to: { kind: 'criterion', id: 'set' } },
      rule: 'As specified. Half of such lots are accepted.',
    })
  })
  it('says of the governing set that it is unchecked, and how much it leaves out', () => {
    expect(printedSet(certificate({ criteria: [{ ...SET, asRead: true, lacks: 2 }] }))?.rule).toBe(
      'As specified. Half of such lots are accepted. The limits of the set are as read, not checked against the published standard. The set leaves out 2 parts of its specification, listed on its page.',
    )
  })
})
