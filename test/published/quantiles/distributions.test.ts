import { describe, expect, it } from 'vitest'
import { cumulative, quantile } from '../../../src/core/statistics/distributions.ts'
import { chiSquareCumulative, chiSquareQuantile } from '../../../src/core/statistics/chi-square.ts'
import { varianceRatioAbove } from '../../../src/core/statistics/f-test.ts'
import { onlyCase } from '../values.ts'

// Rounded, these stand in any printed table of the distributions; the digits beyond are scipy's,
// cross-checked with R (values.json).
const { inputs, expected, tolerance } = onlyCase('quantiles')
const rel = tolerance['rel'] ?? 0

describe('quantile and cumulative, printed tables', () => {
  it.each(
    (inputs['t'] as [number, number][]).map(
      ([p, df], place) => [p, df, (expected['t'] as number[])[place] ?? NaN] as const,
    ),
  )('Student t: %s with %s degrees of freedom is %s, and back', (p, df, wanted) => {
    expect(Math.abs(quantile(p, df) / wanted - 1)).toBeLessThanOrEqual(rel)
    expect(Math.abs(cumulative(wanted, df) - p)).toBeLessThanOrEqual(1e-8)
  })

  it.each(
    (inputs['norm'] as number[]).map(
      (p, place) => [p, (expected['norm'] as number[])[place] ?? NaN] as const,
    ),
  )('normal: %s is %s, and back', (p, wanted) => {
    expect(Math.abs(quantile(p) / wanted - 1)).toBeLessThanOrEqual(rel)
    expect(Math.abs(cumulative(wanted) - p)).toBeLessThanOrEqual(1e-8)
  })

  it.each(
    (inputs['chi2'] as [number, number][]).map(
      ([p, df], place) => [p, df, (expected['chi2'] as number[])[place] ?? NaN] as const,
    ),
  )('chi-square: %s with %s degrees of freedom is %s, and back', (p, df, wanted) => {
    expect(Math.abs(chiSquareQuantile(p, df) / wanted - 1)).toBeLessThanOrEqual(rel)
    expect(Math.abs(chiSquareCumulative(wanted, df) - p)).toBeLessThanOrEqual(1e-8)
  })

  it.each(
    (inputs['F'] as [number, number, number][]).map(
      ([p, df1, df2], place) => [p, df1, df2, (expected['F'] as number[])[place] ?? NaN] as const,
    ),
  )('F: %s with %s and %s degrees of freedom is %s', (p, df1, df2, wanted) =>
    expect(Math.abs(1 - varianceRatioAbove(wanted, df1, df2) - p)).toBeLessThanOrEqual(1e-9),
  )

  it('comes close to the normal with many degrees of freedom, and takes parts of one', () => {
    expect(quantile(0.975, 1e6)).toBeCloseTo(quantile(0.975), 4)
    const between = quantile(0.975, 3.3)
    expect(between).toBeLessThan(quantile(0.975, 3))
    expect(between).toBeGreaterThan(quantile(0.975, 4))
  })
})
