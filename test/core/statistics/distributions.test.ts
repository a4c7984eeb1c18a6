/** Published quantiles stand in test/published/quantiles; here what ties the functions to each other. */
import { describe, expect, it } from 'vitest'
import { cumulative, quantile } from '../../../src/core/statistics/distributions.ts'

describe('cumulative and quantile', () => {
  it('are the standard normal without degrees of freedom: one half at nought', () => {
    expect(cumulative(0)).toBe(0.5)
    expect(quantile(0.5)).toBe(0)
    // 1.959964 (tables).
    expect(quantile(0.975)).toBeCloseTo(1.959964, 6)
  })
  it('are Student’s with them: one degree of freedom is the Cauchy distribution, three quarters at one', () => {
    expect(cumulative(1, 1)).toBeCloseTo(0.75, 14)
    expect(quantile(0.75, 1)).toBeCloseTo(1, 14)
  })
  it.each([undefined, 1, 4, 30])('invert each other with %s degrees of freedom', (df) => {
    for (const p of [0.01, 0.3, 0.5, 0.9, 0.999]) expect(cumulative(quantile(p, df), df)).toBeCloseTo(p, 10)
  })
})
