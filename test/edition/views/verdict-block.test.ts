import { describe, expect, it } from 'vitest'
import { verdictBlock } from '../../../src/edition/views/verdict-block.ts'
import { certificate, clause, editionAround, verdict } from './certificate-fixture.ts'

const edition = editionAround()
const [SET] = certificate().criteria as [ReturnType<typeof certificate>['criteria'][number]]

describe('verdictBlock', () => {
  it('gives the governing verdict in full, with dates and units as on a page', () => {
    const pending = verdict([clause()], {
      outcome: 'pending',
      reasons: ['pending; all other clauses met', 'Index, 28 d: test recorded, result due 2026-04-08'],
      release: 'released for shipment, conditional on a density of 2.4 g/cm3',
    })
    expect(verdictBlock(edition, certificate({ verdicts: [pending] }))).toEqual({
      governing: {
        outcome: 'pending',
        cautions: [],
        headline: 'Pending under VALE 1, edition 1, class N',
        reasons: [
          'Pending; all other clauses met.',
          'Index, 28\u00a0d: test recorded, result due 8\u00a0April 2026.',
        ],
        release: 'Released for shipment, conditional on a density of 2.4 g/cm³.',
        set: { text: 'Limits of the vale', href: '/a/criteria/set/' },
        rule: 'As specified. Half of such lots are accepted.',
      },
      others: [],
    })
  })
  it('sets a withdrawal and a trial judgement over the headline', () => {
    const document = certificate({ state: 'withdrawn', criteria: [{ ...SET, trial: true }] })
    expect(verdictBlock(edition, document).governing?.cautions).toEqual([
      'This certificate is withdrawn; the judgement below no longer stands',
      'Trial judgement, not a statement of conformity',
    ])
  })
  it('gives each other set a line, without a link where the set is no longer on record', () => {
    const gone = { ...SET, id: 'gone', designation: 'OLD 1', trial: true }
    const document = certificate({
      criteria: [SET, gone],
      verdicts: [
        verdict([clause()]),
        verdict([], { criterion: 'gone', class: null, outcome: 'does-not-meet' }),
      ],
    })
    expect(verdictBlock(edition, document).others).toEqual([
      {
        outcome: 'does-not-meet',
        headline: { text: 'Does not meet OLD 1, edition 1', href: null },
        trial: 'trial judgement, not a statement of conformity',
      },
    ])
  })
  it('has no verdict where no criterion applies', () => {
    expect(verdictBlock(edition, certificate({ criteria: [], verdicts: [] }))).toEqual({
      governing: null,
      others: [],
    })
  })
})
