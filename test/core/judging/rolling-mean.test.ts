import { describe, expect, it } from 'vitest'
import { judgeRollingMean } from '../../../src/core/judging/rolling-mean.ts'
import type { WrittenCriterion } from '../../../src/records/criteria/written-criterion.ts'
import { comparisonCase, history, result } from './fixture.ts'

const over = (
  count: number,
  preceding: readonly number[],
  own: number,
  set: Partial<WrittenCriterion> = {},
) =>
  judgeRollingMean(
    comparisonCase(
      { property: 'SO3', 'at-most': '3.0 %', statistic: { 'rolling-mean': count } },
      { preceding: history('SO3', preceding) },
      set,
    ),
    { of: 'rolling-mean', count },
    result('SO3', own),
  )

describe('judgeRollingMean', () => {
  it('judgeRollingMean holds the mean to the limit, the lot’s own result among its last', () => {
    // (2.0 + 2.5 + 4.5) / 3 = 3.0, on the very limit; with 4.8 it is 3.1. The 9 lies too far back.
    const found = over(3, [9, 2, 2.5], 4.5)
    expect(found).toMatchObject({
      outcome: 'meets',
      value: 3,
      compared: 3,
      result: null,
      against: { mean: 3, n: 3, lots: ['s/L2', 's/L3'] },
    })
    expect(found.reasons).toEqual([
      {
        code: 'compared-with-limit',
        params: {
          subject: 'mean',
          compared: { value: 3, decimals: 1, unit: '%' },
          met: true,
          limit: { operator: 'at-most', written: ['3.0 %'] },
        },
      },
      { code: 'rolling-mean', params: { n: 3 } },
    ])
    expect(over(3, [2, 2.5], 4.8)).toMatchObject({ outcome: 'does-not-meet', compared: 3.1 })
  })

  it('judgeRollingMean needs as many results as the mean has, and no more', () => {
    expect(over(3, [2], 2).reasons).toEqual([{ code: 'too-few-results', params: { n: 2, atLeast: 3 } }])
    expect([over(3, [2], 2).outcome, over(3, [2, 2], 2).outcome, over(1, [], 2).outcome]).toEqual([
      'insufficient-history',
      'meets',
      'meets',
    ])
  })

  it('judgeRollingMean is judged as specified under any rule', () => {
    const set = { 'decision-rule': { guarded: 2, 'agreed-in': 'provision 7' } }
    expect(over(2, [3], 3, set)).toMatchObject({
      outcome: 'meets',
      reasons: [{ code: 'compared-with-limit' }, { code: 'rolling-mean' }],
    })
  })
})
