/** The distributions that rules and statistics ask for, from one library each. */
import normalCdf from '@stdlib/stats-base-dists-normal-cdf'
import normalQuantile from '@stdlib/stats-base-dists-normal-quantile'
import studentCdf from '@stdlib/stats-base-dists-t-cdf'
import studentQuantile from '@stdlib/stats-base-dists-t-quantile'

/**
 * Probability that a standard normal variable, or Student's t, is not above x.
 * @param x dimensionless; infinite ends allowed
 * @param df degrees of freedom, above zero, not necessarily whole; absent for the normal distribution
 * @returns probability from 0 to 1
 * Note: never throws: NaN for NaN, and for a df of zero or less.
 */
export function cumulative(x: number, df?: number): number {
  return df === undefined ? normalCdf(x, 0, 1) : studentCdf(x, df)
}

/**
 * Quantile of the standard normal distribution, or of Student's t.
 * @param p probability to the left, from 0 to 1
 * @param df degrees of freedom, above zero, not necessarily whole; absent for the normal distribution
 * @returns dimensionless; −Infinity at 0, Infinity at 1
 * Note: never throws: NaN for p outside 0 to 1, for a df of zero or less, and for NaN.
 */
export function quantile(p: number, df?: number): number {
  return df === undefined ? normalQuantile(p, 0, 1) : studentQuantile(p, df)
}
