import { describe, expect, it } from 'vitest'
import { acceptanceNumber, judgeByAttributes } from '../../../src/core/judging/by-attributes.ts'
import type { StatisticOf } from '../../../src/core/judging/series-of-results.ts'
import type { WrittenClause } from '../../../src/records/criteria/written-criterion.ts'
import { comparisonCase, periodOf, quantityOf, result } from './fixture.ts'

const acceptance = [
  { from: 3, allow: 0 },
  { from: 5, allow: 1 },
]
const plan: StatisticOf<'attributes'> = { of: 'attributes', days: 365, acceptance }
const limits: Omit<WrittenClause, 'clause'> = { property: 'SO3', 'at-most': '3.0 %' }
const over = (values: readonly number[], written = limits) =>
  judgeByAttributes(
    comparisonCase(
      { ...written, statistic: { attributes: { period: quantityOf('365 d', 'duration'), acceptance } } },
      { period: periodOf(values.slice(0, -1)) },
    ),
    plan,
    result('SO3', values.at(-1) ?? Number.NaN),
  )

describe('judgeByAttributes', () => {
  it('judgeByAttributes holds the number beyond the limit to the acceptance number', () => {
    // Two of five lie beyond 3.0, one may; the mean is (2 + 4 + 1 + 3 + 5) / 5 = 3.
    expect(over([2, 4, 1, 3, 5])).toEqual({
      outcome: 'does-not-meet',
      reasons: [
        {
          code: 'results-beyond-limit',
          params: { beyond: 2, n: 5, allowed: 1, limits: [{ operator: 'at-most', written: ['3.0 %'] }] },
        },
      ],
      value: 2,
      compared: 2,
      unit: '',
      decimals: 0,
      limit: { operator: 'at-most', values: [1], unit: '', written: ['1'], layer: 'trial' },
      against: { mean: 3, n: 5, lots: ['s/P1', 's/P2', 's/P3', 's/P4'], values: [2, 4, 1, 3] },
    })
    expect(over([2, 4, 1, 3, 3]).outcome).toBe('meets')
    expect([over([2, 2, 2]).outcome, over([2, 2, 3.1]).outcome]).toEqual(['meets', 'does-not-meet'])
  })

  it('judgeByAttributes rounds each result to the digits of the limit, unless the clause says otherwise', () => {
    expect(over([2, 2, 3.04]).value).toBe(0)
    expect(over([2, 2, 3.04], { ...limits, resolution: 0.01 }).value).toBe(1)
    expect(over([2, 2, 3.04], { ...limits, resolution: 'none' }).value).toBe(1)
  })

  it('judgeByAttributes counts a result once that lies beyond any of several limits', () => {
    expect(over([1, 2, 3, 4, 5], { ...limits, 'at-least': '2.0 %' })).toMatchObject({
      value: 3,
      reasons: [{ params: { limits: [{ operator: 'at-least' }, { operator: 'at-most' }] } }],
    })
  })

  it('judgeByAttributes says how many results its plan begins with', () => {
    expect(over([2, 2])).toEqual({
      outcome: 'insufficient-history',
      reasons: [{ code: 'too-few-results', params: { n: 2, atLeast: 3 } }],
    })
  })
})

describe('judgeByAttributes, a plan without entries', () => {
  it('judgeByAttributes decides nothing by it', () => {
    const empty = { ...plan, acceptance: [] }
    expect(judgeByAttributes(comparisonCase(limits), empty, result('SO3', 2)).reasons).toEqual([
      { code: 'too-few-results', params: { n: 1, atLeast: 1 } },
    ])
  })
})

describe('acceptanceNumber', () => {
  it('acceptanceNumber takes the last entry that the number of results reaches', () => {
    expect([2, 3, 4, 5, 99].map((n) => acceptanceNumber(n, { acceptance }))).toEqual([null, 0, 0, 1, 1])
  })

  it('acceptanceNumber follows the rule beyond the table in the last entry alone, and never falls below it', () => {
    const beyond = { factor: 0.5, less: 1 }
    // 0.5 × (5 − 1) = 2, × (8 − 1) = 3.5 and so 3; with 20 less the rule would give −8 for five results.
    expect([4, 5, 8].map((n) => acceptanceNumber(n, { acceptance, beyond }))).toEqual([0, 2, 3])
    expect(acceptanceNumber(5, { acceptance, beyond: { factor: 0.5, less: 20 } })).toBe(1)
  })
})
