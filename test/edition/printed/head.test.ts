import { describe, expect, it } from 'vitest'
import { readAge } from '../../../src/core/measure/age.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { printedHead, printedWithdrawal } from '../../../src/edition/printed/head.ts'
import { certificate, clause, verdict } from '../certificate-fixture.ts'

describe('printedHead', () => {
  it('says what the certificate is, which revision, where it stands, and what it replaces', () => {
    expect(printedHead(certificate())).toEqual({
      lot: 'H-1',
      material: 'Raw natural pozzolan, Hill tuff',
      certificate: 'hill/H-1',
      revision: '1',
      state: 'complete',
      standing: 'Meets',
      issued: '8\u00a0April 2026',
      replaces: 'revision 0 of 20\u00a0March 2026',
      reason: '28 d results added',
    })
  })
  it('says once what a source is that is named after its kind', () => {
    const facts = certificate()
    const source = { ...facts.source, kind: 'coal-fly-ash', name: 'Coal fly ash' } as const
    expect(printedHead({ ...facts, source }).material).toBe('Coal fly ash')
  })
  it('says of a draft that it was never issued', () => {
    const draft = certificate({ revision: null, state: 'draft', issued: null, replaces: null, reason: null })
    expect(printedHead(draft)).toEqual({
      lot: 'H-1',
      material: 'Raw natural pozzolan, Hill tuff',
      certificate: 'hill/H-1',
      revision: 'none, never issued',
      state: 'draft',
      standing: 'Draft, never issued; would meet',
      issued: 'not issued',
    })
  })
  it('never gives the state without the verdict, nor the verdict of a withdrawn lot as one in force', () => {
    const failing = [verdict([clause()], { outcome: 'does-not-meet' })]
    const awaited = {
      property: 'strength-activity-index',
      age: readAge('28 d'),
      due: readMoment('2026-07-04'),
      conditionName: null,
    } as const
    const standing = (more: Parameters<typeof certificate>[0]) =>
      printedHead(certificate({ verdicts: failing, ...more })).standing
    expect(standing({})).toBe('Does not meet')
    expect(standing({ state: 'provisional', awaited: [awaited] })).toBe(
      'Does not meet; 28 d strength activity index due 4 July 2026',
    )
    expect(standing({ state: 'withdrawn' })).toBe('Withdrawn 8 April 2026; was: does not meet')
    expect(standing({ awaited: [{ ...awaited, overdueSince: readMoment('2026-02-04') }] })).toBe(
      'Does not meet; 28 d strength activity index overdue since 4 February 2026',
    )
  })
})

describe('printedWithdrawal', () => {
  it('gives date and reason as written, and the lot that replaces it', () => {
    const of = (replacedBy: ReturnType<typeof certificate>['replacedBy']) =>
      printedWithdrawal(certificate({ state: 'withdrawn', reason: 'mixed up on 2026-03-18', replacedBy }))
    const own = { on: '8\u00a0April 2026.', reason: 'Mixed up on 2026-03-18.' }
    expect(of(null)).toEqual(own)
    expect(of({ id: 'hill/H-2', text: 'H-2' })).toEqual({
      ...own,
      replacement: { text: 'H-2', to: { kind: 'certificate', id: 'hill/H-2' } },
    })
    expect(of({ id: null, text: 'a lot not yet issued' })).toEqual({
      ...own,
      replacement: { text: 'a lot not yet issued' },
    })
  })
  it('is nothing for a certificate that stands', () =>
    expect(printedWithdrawal(certificate())).toBeUndefined())
})
