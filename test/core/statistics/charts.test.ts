import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { effectiveNumber, lag1 } from '../../../src/core/statistics/autocorrelation.ts'
import { chartOf } from '../../../src/core/statistics/chart-signals.ts'
import { cusum } from '../../../src/core/statistics/cusum.ts'
import { ewma, steadyLimits } from '../../../src/core/statistics/ewma.ts'
import { monthDifferences } from '../../../src/core/statistics/months.ts'
import { runSignals } from '../../../src/core/statistics/run-rules.ts'
import { testingError, withoutTesting } from '../../../src/core/statistics/testing-error.ts'

const rulesOf = (deviations: readonly number[]) =>
  runSignals(deviations).map(({ rule, at, from }) => [rule, at, from])

describe('runSignals', () => {
  it('finds a point beyond three standard deviations, and not one at three', () =>
    expect(rulesOf([0.5, 3.1, -0.2, 3])).toEqual([
      ['beyond-limits', 1, 1],
      ['two-of-three', 3, 1],
    ]))

  it('finds the eighth point of a run once, and none of seven', () => {
    const run = [0.2, 0.4, 0.1, 0.6, 0.3, 0.5, 0.2]
    expect(rulesOf([-1, ...run, -1])).toEqual([])
    expect(rulesOf([-1, ...run, 0.4, 0.1, -1])).toEqual([['run-of-eight', 8, 1]])
  })

  it('ends a run on the centre', () =>
    expect(rulesOf([0.2, 0.4, 0.1, 0.6, 0, 0.3, 0.5, 0.2, 0.4])).toEqual([]))

  it('finds six rising points, and not five or six with two alike', () => {
    expect(rulesOf([-1, -0.8, -0.3, 0.1, 0.6])).toEqual([])
    expect(rulesOf([-1, -0.8, -0.3, 0.1, 0.6, 0.7])).toEqual([['six-rising-or-falling', 5, 0]])
    expect(rulesOf([-1, -0.8, -0.3, -0.3, 0.1, 0.6])).toEqual([])
  })

  it('finds two of three beyond two on one side, not on both', () => {
    expect(rulesOf([2.1, 0, 2.3])).toEqual([['two-of-three', 2, 0]])
    expect(rulesOf([2.1, 0, -2.3])).toEqual([])
    expect(rulesOf([2.1, 0, 0, 2.3])).toEqual([])
  })

  it('says the same of the mirrored series, on the other side', () =>
    fc.assert(
      fc.property(fc.array(fc.double({ min: -4, max: 4, noNaN: true }), { maxLength: 40 }), (values) => {
        const [plain, mirrored] = [runSignals(values), runSignals(values.map((value) => -value))]
        expect(mirrored).toEqual(plain.map((one) => ({ ...one, side: one.side === 'high' ? 'low' : 'high' })))
      }),
    ))
})

describe('chartOf', () => {
  it('has no limits for a baseline without scatter', () => expect(chartOf([1, 1, 2], [1, 1])).toBeNull())

  it('by hand: 10, 12, 11 have the centre 11 and a mean moving range of 1.5', () => {
    const limits = chartOf([10, 12, 11], [10, 12, 11])?.limits
    expect(limits?.centre).toBe(11)
    expect(limits?.meanMovingRange).toBe(1.5)
    expect(limits?.movingRangeHigh).toBeCloseTo(1.5 * 3.26653, 4)
  })

  it('moves with the values: a shift and a scale change no signal', () => {
    const values = [10, 12, 11, 9, 10, 11, 12, 10, 11, 20, 11, 10, 13, 13.5, 14, 14.2, 14.5, 15, 14, 14, 14]
    const signalsOf = (list: readonly number[]) => chartOf(list, list.slice(0, 9))?.signals
    expect(signalsOf(values)?.length).toBeGreaterThan(2)
    expect(signalsOf(values.map((value) => 3 * value + 40))).toEqual(signalsOf(values))
  })
})

describe('ewma and cusum', () => {
  it('ewma of the centre stays there, within limits that widen to the steady ones', () => {
    const design = { centre: 5, sigma: 2, lambda: 0.2, width: 3 }
    const points = ewma(
      Array.from({ length: 60 }, () => 5),
      design,
    )
    expect(points.every(({ value }) => value === 5)).toBe(true)
    expect(points[0]?.high).toBeCloseTo(5 + 3 * 2 * 0.2, 12)
    expect(points.at(-1)?.high).toBeCloseTo(steadyLimits(design).high, 8)
  })

  it('cusum by hand: 1, 1, −2 gather 0.5, 1, 0 above and 0, 0, 1.5 below', () =>
    expect(cusum([1, 1, -2])).toEqual([
      { high: 0.5, low: 0 },
      { high: 1, low: 0 },
      { high: 0, low: 1.5 },
    ]))

  it('cusum stands at one side only where values repeat', () =>
    expect(cusum([0.7, 0.7, 0.7]).map(({ low }) => low)).toEqual([0, 0, 0]))
})

describe('small statistics', () => {
  it('lag1 by hand: of 1, 2, 3 it is 0, of 1, −1, 1, −1 it is −3/4', () => {
    expect(lag1([1, 2, 3])).toBe(0)
    expect(lag1([1, -1, 1, -1])).toBe(-0.75)
    expect(lag1([2, 2])).toBeNull()
  })

  it('effectiveNumber by hand: two values of correlation 1/2 are worth 4/3, independent ones all', () => {
    expect(effectiveNumber(2, 0.5)).toBeCloseTo(4 / 3, 12)
    expect(effectiveNumber(17, 0)).toBe(17)
  })

  it('effectiveNumber agrees with the sum written out', () => {
    const [n, phi] = [30, 0.4]
    let sum = 0
    for (let k = 1; k < n; k += 1) sum += (1 - k / n) * phi ** k
    expect(effectiveNumber(n, phi)).toBeCloseTo(n / (1 + 2 * sum), 10)
  })

  it('testingError of differences 1 and 3 is 2 √π/2; a whole scatter of 2 leaves the rest', () => {
    expect(testingError([1, -3])).toBeCloseTo(Math.sqrt(Math.PI), 12)
    expect(withoutTesting(2, Math.sqrt(3))).toBeCloseTo(1, 12)
    expect(withoutTesting(1, 2)).toBe(0)
  })

  it('monthDifferences by hand: January 3, 4, 5 against 1, 2, 3 elsewhere is two higher', () => {
    const of = (month: number, values: number[]) => values.map((value) => ({ month, value }))
    const [january, ...others] = monthDifferences(
      [...of(1, [3, 4, 5]), ...of(2, [1, 2]), ...of(3, [3])],
      3,
      0.95,
    )
    expect(january).toMatchObject({ month: 1, n: 3, difference: 2 })
    // Both variances are 1, so that the standard error is √(2/3) with four degrees of freedom.
    expect(january?.interval[1]).toBeCloseTo(2 + 2.7764451 * Math.sqrt(2 / 3), 6)
    expect(others).toEqual([])
  })
})
