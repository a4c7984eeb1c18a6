/** How far a source stands from one limit, in its own scatter, and the share of results inside. */
import { quantile } from './distributions.ts'
import { incompleteBeta } from './incomplete-beta.ts'

/**
 * One-sided index by the overall standard deviation, Ppk of one side.
 * @param distance of the mean from the limit, above zero inside it
 * @param standardDeviation overall, above zero, in one unit with the distance
 * @returns dimensionless; below zero where the mean lies outside
 * Source: NIST/SEMATECH e-Handbook of Statistical Methods, 6.1.6.
 */
export function capabilityIndex(distance: number, standardDeviation: number): number {
  return distance / (3 * standardDeviation)
}

/**
 * Half width of the interval of a one-sided index.
 * @param index of `capabilityIndex`
 * @param n independent results that it rests on, above 1, not necessarily whole
 * @param level of confidence, between 0 and 1
 * @returns dimensionless, approximate
 * Source: Bissell 1990, Appl. Stat. 39, 331-340 (from memory).
 */
export function capabilityHalfWidth(index: number, n: number, level: number): number {
  return quantile((1 + level) / 2) * Math.sqrt(1 / (9 * n) + index ** 2 / (2 * (n - 1)))
}

/**
 * Estimated share of a normal population inside one limit.
 * @param q distance of the mean from the limit in standard deviations, above zero inside it
 * @param n independent results that mean and standard deviation rest on, above 2, not necessarily whole
 * @returns per cent, from 0 to 100
 * @throws RangeError for n of 2 or less
 * Notes: 1. minimum-variance unbiased, the estimator behind the tables of per cent within limits that agencies
 * use; 2. for three results or four it reaches 0 and 100.
 * Source: Lieberman and Resnikoff 1955, J. Am. Stat. Assoc. 50, 457-516 (from memory).
 */
export function percentWithin(q: number, n: number): number {
  if (!(2 < n)) throw new RangeError(`percentWithin needs more than two results, got ${n}`)
  // Lieberman and Resnikoff 1955: beta(n/2 − 1, n/2 − 1) at 1/2 − q √n / (2 (n − 1)).
  const at = 0.5 - (q * Math.sqrt(n)) / (2 * (n - 1))
  return 100 * (1 - incompleteBeta(at, n / 2 - 1, n / 2 - 1))
}
