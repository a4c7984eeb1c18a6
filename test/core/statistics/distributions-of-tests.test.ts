import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { chiSquareCumulative, countsTest, varianceTest } from '../../../src/core/statistics/chi-square.ts'
import { cumulative } from '../../../src/core/statistics/distributions.ts'
import { varianceRatioAbove } from '../../../src/core/statistics/f-test.ts'
import { incompleteBeta } from '../../../src/core/statistics/incomplete-beta.ts'
import { logGamma } from '../../../src/core/statistics/log-gamma.ts'

// Expected values by scipy.special and scipy.stats 1.17.1 unless a line says otherwise.
describe('logGamma', () => {
  it.each([
    [0.5, 0.5723649429247],
    [3.3, 0.987098577896],
    [170.2, 702.463953],
  ])('of %d is %d', (x, wanted) => expect(Math.abs(logGamma(x) / wanted - 1)).toBeLessThan(2e-9))

  it('is the logarithm of a factorial, by hand: Γ(5) = 24', () =>
    expect(logGamma(5)).toBeCloseTo(Math.log(24), 13))

  it('needs a number above zero', () => expect(() => logGamma(0)).toThrow(RangeError))
})

describe('incompleteBeta', () => {
  it.each([
    [0.2, 0.5, 3, 0.5 + 0],
    [0.7, 2, 3, 0.9163],
    [0.9, 40, 2, 0.07390441],
    [0.51, 600, 599, 0.7465159],
  ])('at %d with %d and %d', (x, a, b, wanted) => {
    // The first row has a closed form: I_x(1/2, 3) by its polynomial in √x.
    const exact = a === 0.5 ? Math.sqrt(x) * (1.875 - 1.25 * x + 0.375 * x * x) : wanted
    expect(incompleteBeta(x, a, b)).toBeCloseTo(exact, 7)
  })

  it('of x and of 1 − x with the shapes exchanged adds up to one', () =>
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 0.999, noNaN: true }),
        fc.double({ min: 0.3, max: 400, noNaN: true }),
        fc.double({ min: 0.3, max: 400, noNaN: true }),
        (x, a, b) => Math.abs(incompleteBeta(x, a, b) + incompleteBeta(1 - x, b, a) - 1) < 1e-10,
      ),
    ))
})

describe('chiSquareCumulative', () => {
  it.each([
    [0.5, 1, 0.52049988],
    [3, 3, 0.60837482],
    [20, 10, 0.97074731],
    [300, 280, 0.80340405],
  ])('at %d with %d degrees of freedom is %d', (x, df, wanted) =>
    expect(chiSquareCumulative(x, df)).toBeCloseTo(wanted, 7),
  )

  it('with two degrees of freedom is 1 − exp(−x/2), by hand', () =>
    expect(chiSquareCumulative(3, 2)).toBeCloseTo(1 - Math.exp(-1.5), 12))

  it('with one is the square of a normal variable', () =>
    expect(chiSquareCumulative(1.96 ** 2, 1)).toBeCloseTo(2 * cumulative(1.96) - 1, 12))
})

describe('tests by chi-square', () => {
  it('countsTest: six counts that should be alike', () => {
    const { statistic, df, pLarge } = countsTest([16, 18, 16, 14, 12, 12], [1, 1, 1, 1, 1, 1])
    expect([statistic, df]).toEqual([2, 5])
    expect(pLarge).toBeCloseTo(0.8491450360846096, 9)
  })

  it('varianceTest: half of the known scatter in ten results', () =>
    expect(varianceTest(0.5, 1, 9).pSmall).toBeCloseTo(0.013130615658014119, 9))
})

describe('varianceRatioAbove', () => {
  it('is the square of Student’s t with one degree of freedom above', () =>
    expect(1 - varianceRatioAbove(2.5 ** 2, 1, 7)).toBeCloseTo(2 * cumulative(2.5, 7) - 1, 11))
})
