/** Whether a share grew from one stretch of a series to the next. */
import { cumulative } from './distributions.ts'

/** So many of n. */
export interface CountedShare {
  readonly near: number
  readonly n: number
}

/**
 * One-sided chance of a share that grew as much, where it did not change.
 * @param before,after counts of the two stretches, n one or more
 * @param phi correlation of neighbours, from 0 to below 1
 * @returns 0 to 1; 1 where both shares are all or nothing
 * Notes: 1. normal approximation of the difference of two proportions, with the correction for continuity; 2. neighbours
 * that are alike make both shares less certain, as they do means.
 * Source: Fleiss, Statistical Methods for Rates and Proportions, comparison of two proportions (from memory).
 */
export function proportionGrowth(before: CountedShare, after: CountedShare, phi: number): number {
  const pooled = (before.near + after.near) / (before.n + after.n)
  const inverse = 1 / before.n + 1 / after.n
  const variance = pooled * (1 - pooled) * inverse * ((1 + phi) / (1 - phi))
  if (variance === 0) return 1
  const grown = after.near / after.n - before.near / before.n - inverse / 2
  return 1 - cumulative(grown / Math.sqrt(variance))
}
