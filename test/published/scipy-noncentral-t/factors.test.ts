import { describe, expect, it } from 'vitest'
import { guardFactor } from '../../../src/core/criteria/decision-rule.ts'
import { toleranceFactor } from '../../../src/core/statistics/tolerance-factor.ts'
import { publishedCases } from '../values.ts'

// Computed by another program: the factors of conformity by variables and of a guard band, few results and the ends of
// the range that a set may ask for among them.
describe('factors against SciPy', () => {
  it.each(publishedCases('scipy-noncentral-t'))('$title', ({ inputs, expected, tolerance }) => {
    const { n, share, confidence, k, df } = inputs as Record<string, number | undefined>
    const factor =
      k === undefined || df === undefined
        ? toleranceFactor(n ?? Number.NaN, share ?? Number.NaN, confidence ?? Number.NaN)
        : guardFactor(k, df)
    expect(Math.abs(factor / (expected['factor'] as number) - 1)).toBeLessThanOrEqual(tolerance['rel'] ?? 0)
  })
})
