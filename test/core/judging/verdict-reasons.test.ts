import { describe, expect, it } from 'vitest'
import type { Outcome } from '../../../src/core/criteria/outcome.ts'
import type { ClauseOutcome } from '../../../src/core/criteria/verdict.ts'
import { verdictReasons } from '../../../src/core/judging/verdict-reasons.ts'

const edition = { edition: '1' }

function clause(id: string, outcome: Outcome, more: Partial<ClauseOutcome> = {}): ClauseOutcome {
  return {
    id,
    outcome,
    decides: false,
    information: false,
    kind: 'value',
    value: null,
    compared: null,
    unit: null,
    decimals: null,
    limit: null,
    result: null,
    reasons: [{ code: 'no-result', params: {} }],
    ...more,
  }
}
const codes = (outcome: Outcome, ...clauses: ClauseOutcome[]) => verdictReasons(outcome, clauses, edition)
const decidedBy = (id: string) => ({ code: 'decided-by', params: { clause: id } })

describe('verdictReasons', () => {
  it('verdictReasons counts what is met, members for information and neutral ones left out', () => {
    expect(
      codes(
        'meets',
        clause('a', 'meets'),
        clause('b', 'not-applicable'),
        clause('c', 'does-not-meet', { information: true }),
      ),
    ).toEqual([{ code: 'all-met', params: { count: 1 } }])
    expect(codes('reported', clause('b', 'reported'))).toEqual([{ code: 'no-clause-applies', params: {} }])
  })

  it('verdictReasons names each clause that is met by approval', () => {
    expect(codes('meets-by-approval', clause('a', 'meets'), clause('b', 'meets-by-approval'))).toEqual([
      { code: 'all-met-some-by-approval', params: { count: 2 } },
      decidedBy('b'),
    ])
  })

  it('verdictReasons says that all others are met, or how many of how many', () => {
    expect(codes('pending', clause('a', 'meets'), clause('b', 'pending'))).toEqual([
      { code: 'others-met', params: { outcome: 'pending', count: 1, others: 1 } },
      decidedBy('b'),
    ])
    expect(codes('pending', clause('b', 'pending'))[0]).toEqual({
      code: 'others-met',
      params: { outcome: 'pending', count: 1, others: 0 },
    })
    expect(
      codes('does-not-meet', clause('a', 'does-not-meet'), clause('b', 'pending'), clause('d', 'pending')),
    ).toEqual([
      { code: 'met-so-far', params: { met: 0, failed: 1, of: 3 } },
      decidedBy('a'),
      { code: 'also-open', params: { outcome: 'pending', clauses: ['b', 'd'] } },
    ])
  })

  it('verdictReasons of a new source tells whether uniformity alone waits for a history', () => {
    const uniform = clause('u', 'insufficient-history', { kind: 'deviation' })
    const other = clause('s', 'insufficient-history', { kind: 'statistic' })
    expect(codes('insufficient-history', clause('a', 'meets'), uniform)[0]).toEqual({
      code: 'history-lacking',
      params: { uniformityAlone: true },
    })
    expect(codes('insufficient-history', uniform, other)).toEqual([
      { code: 'history-lacking', params: { uniformityAlone: false } },
      decidedBy('u'),
      decidedBy('s'),
    ])
  })

  it('verdictReasons names the innermost members with the outcome, else the group itself', () => {
    const inner = [clause('m', 'does-not-meet'), clause('n', 'meets')]
    expect(codes('does-not-meet', clause('g', 'does-not-meet', { clauses: inner })).slice(1)).toEqual([
      decidedBy('m'),
    ])
    const without = clause('g', 'pending', { clauses: [clause('m', 'meets')] })
    expect(codes('pending', without).slice(1)).toEqual([decidedBy('g')])
  })

  it('verdictReasons says which of several routes was used, of groups that decided alone', () => {
    const route = { combine: 'any-of', kind: 'group', clauses: [] } as const
    expect(
      codes(
        'meets',
        clause('a', 'meets', { ...route, decides: true }),
        clause('b', 'meets', route),
        clause('c', 'meets', { ...route, combine: 'all-of', decides: true }),
      ),
    ).toEqual([{ code: 'all-met', params: { count: 3 } }, decidedBy('a')])
  })

  it('verdictReasons names no route of a set that is not met', () => {
    const failed = { combine: 'any-of', kind: 'group', clauses: [], decides: true } as const
    expect(codes('does-not-meet', clause('a', 'does-not-meet', failed))).toEqual([
      { code: 'others-met', params: { outcome: 'does-not-meet', count: 1, others: 0 } },
      decidedBy('a'),
    ])
  })

  it('verdictReasons says last that the edition is superseded, by its name where that is known', () => {
    const last = (more: object) =>
      verdictReasons('meets', [clause('a', 'meets')], { ...edition, ...more }).slice(1)
    expect(last({ supersededBy: 'c618-19' })).toEqual([
      { code: 'edition-superseded', params: { edition: '1', by: 'c618-19' } },
    ])
    expect(last({ supersededBy: 'c618-19', laterName: 'ASTM C618, edition 19' })).toEqual([
      { code: 'edition-superseded', params: { edition: '1', by: 'ASTM C618, edition 19' } },
    ])
    expect(last({})).toEqual([])
  })
})
