/** How far a laboratory lies from the others (h) and how much it scatters beside them (k). */
import { mean, standardDeviation } from '../../statistics/descriptive.ts'
import { quantile } from '../../statistics/distributions.ts'
import { varianceRatioQuantile } from '../../statistics/f-test.ts'
import { pooledVariance } from '../../statistics/pooled-variance.ts'
import { type Cell, cellFigures } from './cells.ts'

export interface Consistency {
  readonly laboratory: string
  readonly h: number
  /** Null with a single result, and where no laboratory scatters. */
  readonly k: number | null
  readonly hBeyond: boolean
  readonly kBeyond: boolean
}

export interface CriticalConsistency {
  /** Two-sided. */
  readonly h: number
  /** One-sided, for the most frequent number of replicates; null without replicates. */
  readonly k: number | null
}

/** ASTM E691, 16.1.3: the level at which h and k are called beyond (from memory). */
export const CONSISTENCY_LEVEL = 0.005

/**
 * Consistency statistics of one material.
 * @param cells one for each laboratory
 * @returns null for fewer than three laboratories, or where all means are the same
 * Note: a cell with fewer replicates than the others is held against the critical k of its own number.
 * Source: ASTM E691-99, h and k; critical values from Student's t and F, which give its table 5 (checked).
 */
export function consistency(cells: readonly Cell[]): readonly Consistency[] | null {
  const figures = cellFigures(cells)
  const p = figures.length
  if (p < 3) return null
  const means = figures.map((cell) => cell.mean)
  const [centre, spread] = [mean(means), standardDeviation(means)]
  if (spread === 0) return null
  const scattering = figures.filter(({ deviation }) => deviation !== null)
  const pooled = Math.sqrt(pooledVariance(scattering.map(({ values }) => values))?.meanSquare ?? 0)
  const limit = criticalH(p, CONSISTENCY_LEVEL)
  return figures.map(({ laboratory, mean: own, deviation, values }) => {
    const h = (own - centre) / spread
    const k = deviation === null || pooled === 0 ? null : deviation / pooled
    return {
      laboratory,
      h,
      k,
      hBeyond: limit < Math.abs(h),
      kBeyond: k !== null && criticalK(scattering.length, values.length, CONSISTENCY_LEVEL) < k,
    }
  })
}

/**
 * Critical h, two-sided.
 * @param p laboratories, three or more
 * @param level between 0 and 1
 * @returns dimensionless, above zero
 * Source: ASTM E691: (p − 1) t / √(p (t² + p − 2)), t with p − 2 degrees of freedom (from memory; its table checked).
 */
export function criticalH(p: number, level: number): number {
  const t = quantile(1 - level / 2, p - 2)
  return ((p - 1) * t) / Math.sqrt(p * (t * t + p - 2))
}

/**
 * Critical k, one-sided.
 * @param p laboratories, two or more
 * @param n replicates of a cell, two or more
 * @param level between 0 and 1
 * @returns dimensionless, above zero
 * Source: ASTM E691: √(p / (1 + (p − 1)/F)), F with n − 1 and (p − 1)(n − 1) degrees of freedom (from memory; its
 * table checked).
 */
export function criticalK(p: number, n: number, level: number): number {
  return Math.sqrt(p / (1 + (p - 1) / varianceRatioQuantile(1 - level, n - 1, (p - 1) * (n - 1))))
}
