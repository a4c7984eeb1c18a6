import { describe, expect, it } from 'vitest'
import type { ClauseOutcome, Verdict } from '../../../src/core/criteria/verdict.ts'
import { concernedGroups } from '../../../src/edition/certificate/withheld.ts'
import type { Lot } from '../../../src/records/schema/loaded-records.ts'

const isIssued = (lot: string) => lot !== 'hill/H-9'
const record = (more: object) => ({ samples: [{ id: 'A' }], ...more }) as unknown as Lot
const clause = (more: object) =>
  ({ reasons: [{ code: 'by-members', params: {} }], ...more }) as unknown as ClauseOutcome
const verdicts = (...clauses: ClauseOutcome[]) => [{ clauses } as unknown as Verdict]
const plain = { record: record({}), verdicts: verdicts(clause({ against: { lots: ['hill/H-1'] } })) }

describe('concernedGroups', () => {
  it('names persons alone where nothing is sealed and every lot named was issued', () => {
    expect(concernedGroups(plain, ['hill/H-2'], isIssued)).toEqual(['persons'])
  })
  it('names seals of the lot and of its samples', () => {
    expect(concernedGroups({ ...plain, record: record({ seals: ['1'] }) }, [], isIssued)).toContain('seals')
    const sealed = record({ samples: [{ id: 'A' }, { id: 'B', seal: '2' }] })
    expect(concernedGroups({ ...plain, record: sealed }, [], isIssued)).toContain('seals')
  })
  it('names the purchase order of the lot', () => {
    const ordered = record({ 'purchase-order': '4500-1' })
    expect(concernedGroups({ ...plain, record: ordered }, [], isIssued)).toEqual([
      'persons',
      'purchase-order',
    ])
  })
  it('names drafts where a lot not yet issued stands in a clause, in a member of one, in a gap or replaces', () => {
    const against = clause({ against: { lots: ['hill/H-1', 'hill/H-9'] } })
    const gap = clause({
      reasons: [{ code: 'sampled-too-seldom', params: { gaps: [{ since: 'hill/H-9' }, {}] } }],
    })
    for (const one of [against, gap, clause({ clauses: [clause({}), against] })])
      expect(concernedGroups({ ...plain, verdicts: verdicts(one) }, [], isIssued)).toEqual([
        'persons',
        'drafts',
      ])
    expect(concernedGroups(plain, ['hill/H-9'], isIssued)).toEqual(['persons', 'drafts'])
  })
})
