import { describe, expect, it } from 'vitest'
import type { Evidence } from '../../../src/core/evidence/evidence.ts'
import { judgeShareWithin } from '../../../src/core/judging/share-within-limits.ts'
import type { StatisticOf } from '../../../src/core/judging/series-of-results.ts'
import type { WrittenClause } from '../../../src/records/criteria/written-criterion.ts'
import { comparisonCase, history, result } from './fixture.ts'

const plan: StatisticOf<'tolerance'> = { of: 'tolerance', count: 3, atLeast: 3, share: 0.5 }

/** On 29, 30, 31, whose mean is 30 with s of 1, unless other values are given. */
function share(
  limits: Omit<WrittenClause, 'clause' | 'property'>,
  values: readonly number[] = [29, 30, 31],
  statistic = plan,
  evidence: Partial<Evidence> = {},
) {
  return judgeShareWithin(
    comparisonCase(
      { property: 'share-fly-ash', ...limits },
      { preceding: history('share-fly-ash', values.slice(0, -1)), ...evidence },
    ),
    statistic,
    result('share-fly-ash', values.at(-1) ?? Number.NaN),
  )
}

// Shares of a normal distribution from its tables: Φ(1) = 0.841345, Φ(2) = 0.977250.
describe('judgeShareWithin', () => {
  it.each([
    ['at most one s above the mean', { 'at-most': '31 %' }, 84.1345],
    ['at least one s below the mean', { 'at-least': '29 %' }, 84.1345],
    ['at most two s below the mean', { 'at-most': '28 %' }, 2.275],
    ['between one s below and two above', { between: ['29 %', '32 %'] }, 81.8595],
    ['the smaller share of two limits', { 'at-least': '28 %', 'at-most': '31 %' }, 84.1345],
    ['a magnitude far beyond', { 'magnitude-at-most': '30 %' }, 50],
  ] as const)('judgeShareWithin, %s', (_, limits, percent) => {
    expect(share(limits).value).toBeCloseTo(percent, 3)
  })

  it('judgeShareWithin meets on the very share, and says what it found', () => {
    const found = share({ 'at-most': '30 %' })
    expect(found).toMatchObject({
      outcome: 'meets',
      value: 50,
      compared: 50,
      unit: '%',
      decimals: 2,
      limit: { operator: 'at-least', values: [50], unit: '%', written: ['50 %'], layer: 'trial' },
    })
    expect(found.reasons).toEqual([
      {
        code: 'share-within-limits',
        params: {
          percent: 50,
          leastPercent: 50,
          n: 3,
          mean: { value: 30, decimals: 2, unit: '%' },
          standardDeviation: { value: 1, decimals: 2, unit: '%' },
          limits: [{ operator: 'at-most', written: ['30 %'] }],
        },
      },
    ])
    expect(share({ 'at-most': '29.9 %' }).outcome).toBe('does-not-meet')
  })

  it('judgeShareWithin takes the last results only, and asks for as many as the clause does', () => {
    expect(share({ 'at-most': '30 %' }, [99, 29, 30, 31]).value).toBe(50)
    const few = (values: readonly number[], atLeast: number) =>
      share({ 'at-most': '40 %' }, values, { ...plan, atLeast })
    expect(few([29, 30], 3)).toEqual({
      outcome: 'insufficient-history',
      reasons: [{ code: 'too-few-results', params: { n: 2, atLeast: 3 } }],
    })
    expect([few([29, 30], 2).outcome, few([30], 1).outcome]).toEqual(['meets', 'insufficient-history'])
  })

  it('judgeShareWithin of results without scatter is all or nothing, all on either limit itself', () => {
    const range = { between: ['29 %', '31 %'] } as const
    expect([29, 31, 28.9, 31.1].map((value) => share(range, [value, value, value]).value)).toEqual([
      100, 100, 0, 0,
    ])
  })

  it('judgeShareWithin takes deviations in points, in the unit of the limit', () => {
    const limits: Omit<WrittenClause, 'clause' | 'property'> = {
      'deviation-from': { declared: 'yes' },
      'at-most': '2 percentage points',
    }
    // From 29 declared: 0, 1, 2 with the mean 1 and s of 1; 2 lies one s above.
    const found = share(limits, [29, 30, 31], plan, { declared: { 'share-fly-ash': '29 %' } })
    expect(found.value).toBeCloseTo(84.1345, 3)
    expect(found.reasons).toMatchObject([
      {
        params: {
          mean: { value: 1, unit: 'percentage points' },
          standardDeviation: { value: 1, unit: 'percentage points' },
        },
      },
    ])
  })

  it('judgeShareWithin takes relative deviations in per cent of the reference', () => {
    const limits: Omit<WrittenClause, 'clause' | 'property'> = {
      'deviation-from': { declared: 'yes' },
      relative: 'yes',
      'at-most': '55 %',
    }
    // From 20 declared: 45, 50 and 55 %, whose mean is 50 with s of 5; 55 lies one s above.
    const found = share(limits, [29, 30, 31], plan, { declared: { 'share-fly-ash': '20 %' } })
    expect(found.reasons).toMatchObject([
      { params: { mean: { value: 50, unit: '%' }, standardDeviation: { value: 5, unit: '%' } } },
    ])
    expect(found.value).toBeCloseTo(84.1345, 3)
    const { 'at-most': _, ...rest } = limits
    const lower = share({ ...rest, 'at-least': '45 %' }, [29, 30, 31], plan, {
      declared: { 'share-fly-ash': '20 %' },
    })
    expect(lower.value).toBeCloseTo(84.1345, 3)
  })

  it('judgeShareWithin states mean and scatter in the unit of the property, whatever the limit is written in', () => {
    const found = judgeShareWithin(
      comparisonCase(
        { property: 'density', 'at-most': '2400 kg/m3' },
        { preceding: history('density', [2.3, 2.4]) },
      ),
      plan,
      result('density', 2.5),
    )
    expect(found.reasons).toMatchObject([
      {
        params: {
          mean: { value: expect.closeTo(2.4, 12), unit: 'g/cm3' },
          standardDeviation: { value: expect.closeTo(0.1, 12), unit: 'g/cm3' },
        },
      },
    ])
  })

  it('judgeShareWithin states a deviation in the stored unit, whatever the limit is written in', () => {
    const limits = { 'deviation-from': { declared: 'yes' }, 'magnitude-at-most': '200 kg/m3' } as const
    const found = judgeShareWithin(
      comparisonCase(
        { property: 'density', ...limits },
        { preceding: history('density', [2.3, 2.4]), declared: { density: '2.3 g/cm3' } },
      ),
      plan,
      result('density', 2.5),
    )
    // From 2.3: 0, 0.1 and 0.2 g/cm3.
    expect(found.reasons).toMatchObject([
      {
        params: {
          mean: { value: expect.closeTo(0.1, 12), unit: 'g/cm3' },
          standardDeviation: { value: expect.closeTo(0.1, 12), unit: 'g/cm3' },
        },
      },
    ])
  })

  it('judgeShareWithin is not reported in per cent of a declared zero', () => {
    const limits = { 'deviation-from': { declared: 'yes' }, relative: 'yes', 'at-most': '10 %' } as const
    const declared = { 'share-fly-ash': '0 %' }
    expect(share(limits, [0, 1, 1], plan, { declared })).toEqual({
      outcome: 'not-reported',
      reasons: [{ code: 'no-deviation-from-zero', params: {} }],
    })
  })

  it('judgeShareWithin is not reported without its reference', () => {
    const limits = { 'deviation-from': { declared: 'yes' }, 'at-most': '2 percentage points' } as const
    expect(share(limits)).toEqual({
      outcome: 'not-reported',
      reasons: [{ code: 'no-declared-reference', params: {} }],
    })
  })
})
