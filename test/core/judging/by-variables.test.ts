import { describe, expect, it } from 'vitest'
import { judgeByVariables } from '../../../src/core/judging/by-variables.ts'
import type { StatisticOf } from '../../../src/core/judging/series-of-results.ts'
import type { WrittenClause, WrittenCriterion } from '../../../src/records/criteria/written-criterion.ts'
import { comparisonCase, periodOf, quantityOf, result } from './fixture.ts'

/**
 * Three results 1, 2, 3 about a level: the mean is level + 2, s is 1. The factor for three results, 90 % and
 * 95 % is 6.15528 (scipy 1.17.1, with the table of tolerance-factor.test.ts).
 */
const FACTOR = 6.15528
const plan: StatisticOf<'variables'> = {
  of: 'variables',
  days: 365,
  atLeast: 3,
  share: 0.9,
  confidence: 0.95,
}

function over(
  limits: Omit<WrittenClause, 'clause' | 'property'>,
  values: readonly number[],
  set: Partial<WrittenCriterion> = {},
  statistic = plan,
) {
  const variables = {
    period: quantityOf('365 d', 'duration'),
    'at-least': 3,
    share: quantityOf('90 %', 'fraction'),
    confidence: quantityOf('95 %', 'fraction'),
  }
  return judgeByVariables(
    comparisonCase(
      { property: 'residue-45um', ...limits, statistic: { variables } },
      { period: periodOf(values.slice(0, -1)) },
      set,
    ),
    statistic,
    result('residue-45um', values.at(-1) ?? Number.NaN),
  )
}

describe('judgeByVariables', () => {
  it('judgeByVariables takes the mean less or plus the factor times the standard deviation', () => {
    const lower = over({ 'at-least': '15 %' }, [20, 21, 22])
    expect([lower.outcome, lower.result]).toEqual(['does-not-meet', null])
    expect(lower.value).toBeCloseTo(21 - FACTOR, 5)
    const upper = over({ 'at-most': '30 %' }, [20, 21, 22])
    expect(upper.outcome).toBe('meets')
    expect(upper.value).toBeCloseTo(21 + FACTOR, 5)
  })

  it('judgeByVariables gives the figures that its estimate rests on, one decimal finer than the property', () => {
    const found = over({ 'at-least': '14 %' }, [20, 21, 22])
    expect(found.reasons).toMatchObject([
      { code: 'compared-with-limit', params: { subject: 'estimate', met: true } },
      {
        code: 'estimate-of',
        params: {
          n: 3,
          mean: { value: 21, decimals: 2, unit: '%' },
          standardDeviation: { value: 1, decimals: 2, unit: '%' },
          factor: expect.closeTo(FACTOR, 5),
        },
      },
    ])
    expect(found.against).toEqual({ mean: 21, n: 3, lots: ['s/P1', 's/P2'], values: [20, 21] })
  })

  it('judgeByVariables asks for as many results as the clause does, and for two at the least', () => {
    const outcome = (values: readonly number[], atLeast: number) =>
      over({ 'at-most': '90 %' }, values, {}, { ...plan, atLeast })
    expect([outcome([20, 20, 20], 3).outcome, outcome([20, 20], 2).outcome]).toEqual(['meets', 'meets'])
    expect(outcome([20, 20], 3).reasons).toEqual([{ code: 'too-few-results', params: { n: 2, atLeast: 3 } }])
    expect(outcome([20], 1).outcome).toBe('insufficient-history')
  })

  it('judgeByVariables holds a range to both sides, with the scatter on each', () => {
    // 21 ± 6.155 is 14.845 to 27.155.
    const range = (low: string, high: string) => over({ between: [low, high] }, [20, 21, 22])
    const found = [range('14.8 %', '27.2 %'), range('14.9 %', '27.2 %'), range('14.8 %', '27.1 %')]
    expect(found.map(({ outcome, limit }) => [outcome, limit?.operator, limit?.written])).toEqual([
      ['meets', 'at-least', ['14.8 %']],
      ['does-not-meet', 'at-least', ['14.9 %']],
      ['does-not-meet', 'at-most', ['27.1 %']],
    ])
  })

  it('judgeByVariables holds a magnitude to both sides, with the scatter on each', () => {
    const bars = (values: readonly number[], limit: string) =>
      judgeByVariables(
        comparisonCase(
          { property: 'autoclave-expansion', 'magnitude-at-most': limit },
          { period: periodOf(values.slice(0, -1)) },
        ),
        plan,
        result('autoclave-expansion', values.at(-1) ?? Number.NaN),
      )
    // s of −0.1, 0, 0.1 is 0.1, and 6.155 × 0.1 = 0.6155 on either side; about 0.1 it is −0.516 to 0.716.
    expect([bars([-0.1, 0, 0.1], '0.62 %').outcome, bars([-0.1, 0, 0.1], '0.61 %').outcome]).toEqual([
      'meets',
      'does-not-meet',
    ])
    expect(bars([0, 0.1, 0.2], '0.62 %').limit).toMatchObject({ operator: 'at-most', values: [0.62] })
    expect(bars([-0.2, -0.1, 0], '0.62 %').limit).toMatchObject({
      operator: 'at-least',
      values: [-0.62],
      written: ['−0.62 %'],
    })
  })

  it('judgeByVariables lets an estimate on a strict limit meet it, on either side', () => {
    const on = (limits: Omit<WrittenClause, 'clause' | 'property'>) => over(limits, [20, 20, 20])
    expect([on({ above: '20 %' }), on({ below: '20 %' })]).toMatchObject([
      { outcome: 'meets', limit: { operator: 'at-least' } },
      { outcome: 'meets', limit: { operator: 'at-most' } },
    ])
    expect([on({ above: '20.1 %' }).outcome, on({ below: '19.9 %' }).outcome]).toEqual([
      'does-not-meet',
      'does-not-meet',
    ])
  })

  it('judgeByVariables holds the estimate to every limit, and is judged as specified under any rule', () => {
    const set = { 'decision-rule': { guarded: 2, 'agreed-in': 'provision 7' } }
    const limits = { 'at-least': '10 %', 'at-most': '27 %' }
    expect(over(limits, [20, 21, 22], set)).toMatchObject({
      outcome: 'does-not-meet',
      limit: { operator: 'at-most', values: [27] },
    })
  })

  it('judgeByVariables needs a limit', () => {
    expect(() =>
      judgeByVariables(
        comparisonCase({ property: 'SO3', report: 'yes' }, { period: periodOf([1, 2]) }),
        plan,
        result('SO3', 3),
      ),
    ).toThrow(new RangeError('judgeByVariables needs a limit, got none in clause c'))
  })
})
