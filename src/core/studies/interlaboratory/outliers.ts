/** Stragglers and outliers among laboratories: Cochran on their scatter, Grubbs on their means. */
import { mean, standardDeviation } from '../../statistics/descriptive.ts'
import { quantile } from '../../statistics/distributions.ts'
import { varianceRatioQuantile } from '../../statistics/f-test.ts'
import { type Cell, cellFigures } from './cells.ts'
import { doubleGrubbsLimits } from './double-grubbs-table.ts'

/** ISO 5725-2, 7.3.2.1: a straggler at 5 %, an outlier at 1 % (from memory). */
export type Standing = 'in-line' | 'straggler' | 'outlier'

export const STRAGGLER_LEVEL = 0.05
export const OUTLIER_LEVEL = 0.01

export interface OutlierTest {
  readonly test: 'cochran' | 'grubbs-low' | 'grubbs-high' | 'grubbs-two-low' | 'grubbs-two-high'
  /** The one or two laboratories asked about. */
  readonly laboratories: readonly string[]
  readonly statistic: number
  /** Critical values at 5 and at 1 %. */
  readonly straggler: number
  readonly outlier: number
  readonly standing: Standing
}

/**
 * Cochran's test of the largest scatter among laboratories.
 * @param cells of one material; those with the most frequent number of replicates are compared
 * @returns null for fewer than two such cells, with single results, and where none scatters
 * Source: ISO 5725-2, 7.3.3 (from memory): C = s_max² / Σ s²; for critical values see `criticalCochran`.
 */
export function cochran(cells: readonly Cell[]): OutlierTest | null {
  const figures = cellFigures(cells)
  const n = mostFrequent(figures.map(({ values }) => values.length))
  const compared = figures.filter(({ values }) => values.length === n)
  if (n < 2 || compared.length < 2) return null
  const largest = compared.reduce((most, cell) =>
    (most.deviation ?? 0) < (cell.deviation ?? 0) ? cell : most,
  )
  const squares = compared.reduce((total, { deviation }) => total + (deviation ?? 0) ** 2, 0)
  if (squares === 0) return null
  const statistic = (largest.deviation ?? 0) ** 2 / squares
  const [straggler, outlier] = [STRAGGLER_LEVEL, OUTLIER_LEVEL].map((level) =>
    criticalCochran(compared.length, n, level),
  ) as [number, number]
  const standing = standingBeyond(statistic, { straggler, outlier })
  return { test: 'cochran', laboratories: [largest.laboratory], statistic, straggler, outlier, standing }
}

/**
 * Grubbs' tests of one and of two extreme cell means, low and high.
 * @param cells of one material
 * @returns empty for fewer than three laboratories, or where all means are the same; those of two means from four
 * laboratories on
 * Note: the test of one at each end is not among those of the standard.
 * Source: ISO 5725-2, 7.3.4 (from memory).
 */
export function grubbs(cells: readonly Cell[]): OutlierTest[] {
  const sorted = cellFigures(cells).toSorted((a, b) => a.mean - b.mean)
  const p = sorted.length
  const means = sorted.map((cell) => cell.mean)
  if (p < 3) return []
  const [centre, deviation] = [mean(means), standardDeviation(means)]
  if (deviation === 0) return []
  const codes = sorted.map(({ laboratory }) => laboratory)
  const [straggler, outlier] = [STRAGGLER_LEVEL, OUTLIER_LEVEL].map((level) => criticalGrubbs(p, level)) as [
    number,
    number,
  ]
  const single = (test: 'grubbs-low' | 'grubbs-high', place: number): OutlierTest => {
    const statistic = Math.abs((means[place] ?? 0) - centre) / deviation
    const standing = standingBeyond(statistic, { straggler, outlier })
    return { test, laboratories: [codes[place] ?? ''], statistic, straggler, outlier, standing }
  }
  const singles = [single('grubbs-low', 0), single('grubbs-high', p - 1)]
  const limits = doubleGrubbsLimits(p)
  if (limits === null) return singles
  const double = (test: 'grubbs-two-low' | 'grubbs-two-high', from: number): OutlierTest => {
    const left = test === 'grubbs-two-low' ? means.slice(2) : means.slice(0, -2)
    const statistic = squaresAboutMean(left) / squaresAboutMean(means)
    // Small values are the suspicious ones: little is left once both are out.
    const standing = standingBeyond(-statistic, { straggler: -limits.straggler, outlier: -limits.outlier })
    return { test, laboratories: codes.slice(from, from + 2), statistic, ...limits, standing }
  }
  return [...singles, double('grubbs-two-low', 0), double('grubbs-two-high', p - 2)]
}

/**
 * Critical value of Cochran's statistic.
 * @param p laboratories, two or more
 * @param n replicates of each, two or more
 * @param level one-sided, between 0 and 1
 * @returns a share, between 1/p and 1
 * Source: 1 / (1 + (p − 1)/F), F at 1 − level/p with n − 1 and (p − 1)(n − 1) degrees of freedom; gives the tables
 * of ISO 5725-2 to their digits (checked).
 */
export function criticalCochran(p: number, n: number, level: number): number {
  return 1 / (1 + (p - 1) / varianceRatioQuantile(1 - level / p, n - 1, (p - 1) * (n - 1)))
}

/**
 * Critical value of Grubbs' statistic for one extreme mean, either end.
 * @param p laboratories, three or more
 * @param level two-sided, between 0 and 1
 * @returns distance from the mean in standard deviations
 * Source: Grubbs 1969, Technometrics 11, 1-21 (from memory); gives table 5 of ISO 5725-2 (checked).
 */
export function criticalGrubbs(p: number, level: number): number {
  const t = quantile(1 - level / (2 * p), p - 2)
  return ((p - 1) / Math.sqrt(p)) * Math.sqrt((t * t) / (p - 2 + t * t))
}

function squaresAboutMean(values: readonly number[]): number {
  return (values.length - 1) * standardDeviation(values) ** 2
}

/** For statistics that are suspicious where they are large. */
function standingBeyond(statistic: number, limits: Pick<OutlierTest, 'straggler' | 'outlier'>): Standing {
  if (limits.outlier < statistic) return 'outlier'
  return limits.straggler < statistic ? 'straggler' : 'in-line'
}

/** The larger of two that are as frequent. */
function mostFrequent(counts: readonly number[]): number {
  const by = Map.groupBy(counts, (count) => count)
  return [...by].reduce(
    (best, [count, all]) =>
      best.times < all.length || (best.times === all.length && best.count < count)
        ? { count, times: all.length }
        : best,
    { count: 0, times: 0 },
  ).count
}
