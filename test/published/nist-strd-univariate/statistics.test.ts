import { describe, expect, it } from 'vitest'
import { lag1 } from '../../../src/core/statistics/autocorrelation.ts'
import { mean, standardDeviation } from '../../../src/core/statistics/descriptive.ts'
import { publishedCases } from '../values.ts'

/** The data as listed, or as the NIST file describes them: a first value, then a pair repeated. */
function dataOf(inputs: Record<string, unknown>): number[] {
  const generator = inputs['generator'] as
    | { first: number; then_alternate: number[]; repeats: number }
    | undefined
  return generator === undefined
    ? (inputs['y'] as number[])
    : [generator.first, ...Array.from({ length: generator.repeats }, () => generator.then_alternate).flat()]
}

// NIST Statistical Reference Datasets, univariate summary statistics, certified values (Michelso, NumAcc1,
// NumAcc2, NumAcc4 and others as in values.json).
// Tolerances are those of values.json, which allow for the binary form of the data (0.1 + 1 000 000.2 is not
// exact).
describe('NIST StRD, univariate', () => {
  it.each(publishedCases('nist-strd-univariate'))(
    '$title: mean and standard deviation have the certified values',
    ({ inputs, expected, tolerance }) => {
      const y = dataOf(inputs)
      expect(Math.abs(mean(y) / (expected['mean'] as number) - 1)).toBeLessThanOrEqual(
        tolerance['mean_rel'] ?? 0,
      )
      expect(Math.abs(standardDeviation(y) / (expected['sd_n_minus_1'] as number) - 1)).toBeLessThanOrEqual(
        tolerance['sd_rel'] ?? 0,
      )
    },
  )

  it.each(publishedCases('nist-strd-univariate'))(
    '$title: neighbours correlate as certified',
    ({ inputs, expected, tolerance }) =>
      expect(
        Math.abs((lag1(dataOf(inputs)) ?? Number.NaN) - (expected['autocorr_lag1'] as number)),
      ).toBeLessThanOrEqual(tolerance['autocorr_abs'] ?? 0),
  )
})
