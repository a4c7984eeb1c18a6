/** What a design can resolve, reckoned before a reading exists from a scatter that is assumed. */
import { chiSquareQuantile } from '../../statistics/chi-square.ts'
import { quantile } from '../../statistics/distributions.ts'
import { increasingRoot } from '../../statistics/increasing-root.ts'
import { noncentralStudent, spreadOfDeviation } from '../../statistics/noncentral-student.ts'

/**
 * Standard deviation of the natural logarithm of a log-normal quantity.
 * @param share coefficient of variation as a share: 0.05 for 5 %
 * @returns dimensionless
 * Source: variance of a log-normal variable, exp(σ²) − 1 times the square of its mean (from memory).
 */
export function logDeviation(share: number): number {
  return Math.sqrt(Math.log1p(share * share))
}

export interface ShiftAsked {
  /** Batches of each of the two materials. */
  readonly batches: number
  /** Degrees of freedom of the pooled scatter between batches, above zero. */
  readonly df: number
  /** Two-sided level of the test is 1 − level. */
  readonly level: number
  /** Share of cases in which the difference must be seen. */
  readonly power: number
}

/**
 * Smallest true difference between the means of two materials that is seen so often.
 * @param asked level and power between 0 and 1, power above 1 − level
 * @returns in standard deviations between batches
 * Note: each mean is of batches that share nothing; the scatter is pooled over more materials than the two.
 * Source: noncentral t distribution with the noncentrality shift/√(2/n); Cohen 1988, chapter 2 (from memory).
 */
export function smallestShift({ batches, df, level, power }: ShiftAsked): number {
  const critical = quantile((1 + level) / 2, df)
  const spread = spreadOfDeviation(df)
  const seen = (noncentrality: number) =>
    1 -
    noncentralStudent(critical, noncentrality, spread) +
    noncentralStudent(-critical, noncentrality, spread)
  // Power falls towards 1 − level at nought and is the same on both sides of it: the logarithm keeps to one.
  const root = increasingRoot((log) => seen(Math.exp(log)) - power, Math.log(critical + 1))
  return Math.exp(root) * Math.sqrt(2 / batches)
}

/**
 * Half width of the interval of a material's mean.
 * @param batches of the material
 * @param df degrees of freedom of the pooled scatter, above zero
 * @param level between 0 and 1
 * @returns in standard deviations between batches
 */
export function meanHalfWidth(batches: number, df: number, level: number): number {
  return quantile((1 + level) / 2, df) / Math.sqrt(batches)
}

/**
 * Half width of the interval of an effect in a two-level design.
 * @param results batches in all conditions or runs, half of them at each level
 * @param df degrees of freedom of the scatter between batches, above zero
 * @param level between 0 and 1
 * @returns in standard deviations between batches
 * Source: an effect is a difference of two means of N/2 results: standard error 2σ/√N (Box, Hunter and Hunter 1978,
 * chapter 10; from memory).
 */
export function effectHalfWidth(results: number, df: number, level: number): number {
  return (2 * quantile((1 + level) / 2, df)) / Math.sqrt(results)
}

/**
 * Interval of a standard deviation, as factors of the one found.
 * @param df degrees of freedom, one or more
 * @param level between 0 and 1
 * @returns low and high: 0.62 and 2.45 for five at 95 %
 * Source: chi-square interval of a variance (NIST/SEMATECH e-Handbook, 7.2.3.1; from memory).
 */
export function deviationFactors(df: number, level: number): readonly [number, number] {
  const tail = (1 - level) / 2
  return [Math.sqrt(df / chiSquareQuantile(1 - tail, df)), Math.sqrt(df / chiSquareQuantile(tail, df))]
}
