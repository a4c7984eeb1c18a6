/** Whether differences of pairs lie about zero. */
import { mean, standardDeviation } from './descriptive.ts'
import { cumulative, quantile } from './distributions.ts'

export interface PairedT {
  readonly n: number
  /** Mean of the differences, in their unit. */
  readonly mean: number
  readonly standardDeviation: number
  readonly t: number
  readonly df: number
  /** Two-sided. */
  readonly p: number
  /** Interval of the mean difference. */
  readonly interval: readonly [number, number]
}

/** Differences that agree to so many digits do not scatter: what is left is the computer's rounding. */
const ROUNDING = 1e-9

/**
 * Paired t test: mean of differences with its interval, and the chance of one so far from zero.
 * @param differences of pairs, one side less the other, all in one unit
 * @param confidence of the interval, between 0 and 1
 * @returns null with fewer than two pairs, and where the differences do not scatter at all
 * Note: assumes that the pairs do not depend on each other; the results of a pair may.
 * Source: Student 1908, Biometrika 6, 1-25 (from memory); its data are the check.
 */
export function pairedT(differences: readonly number[], confidence: number): PairedT | null {
  if (differences.length < 2) return null
  const [centre, scatter] = [mean(differences), standardDeviation(differences)]
  if (scatter <= ROUNDING * Math.max(...differences.map(Math.abs))) return null
  const df = differences.length - 1
  const standardError = scatter / Math.sqrt(differences.length)
  const t = centre / standardError
  const reach = quantile((1 + confidence) / 2, df) * standardError
  return {
    n: differences.length,
    mean: centre,
    standardDeviation: scatter,
    t,
    df,
    p: 2 * cumulative(-Math.abs(t), df),
    interval: [centre - reach, centre + reach],
  }
}
