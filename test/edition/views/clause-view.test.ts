import { describe, expect, it } from 'vitest'
import type { Clause, Criterion } from '../../../src/core/criteria/criterion.ts'
import { clauseView } from '../../../src/edition/views/clause-view.ts'
import { base, conditionTitle, supplement } from './criterion-fixture.ts'

function view(set: Criterion, id: string) {
  const clause = set.clauses.find((candidate) => candidate.id === id) as Clause
  return clauseView(clause, set, { conditionTitle, evidenceOf: () => null })
}

describe('clauseView', () => {
  it('says what is asked in one sentence, its origin apart', () => {
    expect(view(base, 'loi')).toMatchObject({
      sentence:
        'Loss on ignition must be at most 6.0 %, after rounding to the digits of the limit; by approval for class F at most 12.0 %, on evidence: performance records.',
      remarks: '',
      changes: [],
      members: [],
    })
    expect(view(base, 'sum').remarks).toBe('set by the owner')
  })
  it('prints the signs of units', () => {
    expect(view(base, 'dense').sentence).toContain(
      'For class C, Density must be at least 1.95 g/cm³, after rounding to the digits of the limit; optional, judged only when requested.',
    )
  })
  it('holds the members of a group', () => {
    expect(view(base, 'activity').members.map(({ id }) => id)).toEqual(['sai-7', 'sai-28'])
  })
  it('says what a supplement changed, what stood before, and from which layer a clause comes', () => {
    expect(view(supplement, 'loi')).toMatchObject({
      changes: [{ change: 'relax', words: 'Relaxed', by: 'Agency rules, edition 1', was: 'at most 6.0 %' }],
      remarks: expect.stringMatching(/^from: Agency rules, edition 1/),
    })
    expect(view(supplement, 'sum').remarks).toBe('from: VALE 1, edition 1 · set by the owner')
  })
})
