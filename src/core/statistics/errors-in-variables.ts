/** A straight line where both x and y are measured with error. */
import { mean, sum } from './descriptive.ts'

export interface TwoErrorLine {
  readonly n: number
  readonly slope: number
  /** y at x = 0. */
  readonly intercept: number
  /**
   * Slopes at the two ends of what the ratio of variances can be: all error in y, and all in x. The slope of every other ratio
   * lies between them.
   */
  readonly slopes: readonly [number, number]
}

/**
 * The line of greatest likelihood for a known ratio of error variances (Deming's regression).
 * @param xs,ys of equal length
 * @param ratio error variance of y over that of x, above zero
 * @returns null for fewer than three points, and where x and y do not vary together
 * Source: Deming 1943, Statistical Adjustment of Data; Kummell 1879, The Analyst 6, 97-105 (from memory); scipy.odr is the
 * check.
 */
export function twoErrorLine(
  xs: readonly number[],
  ys: readonly number[],
  ratio: number,
): TwoErrorLine | null {
  if (xs.length < 3) return null
  const [meanX, meanY] = [mean(xs), mean(ys)]
  const [dx, dy] = [xs.map((x) => x - meanX), ys.map((y) => y - meanY)]
  const [xx, yy, xy] = [products(dx, dx), products(dy, dy), products(dx, dy)]
  if (xy === 0 || xx === 0) return null
  const difference = yy - ratio * xx
  const root = Math.sqrt(difference ** 2 + 4 * ratio * xy ** 2)
  // Two forms of one root: that which adds numbers of one sign loses no digits.
  const slope = 0 <= difference ? (difference + root) / (2 * xy) : (2 * ratio * xy) / (root - difference)
  return { n: xs.length, slope, intercept: meanY - slope * meanX, slopes: [xy / xx, yy / xy] }
}

function products(a: readonly number[], b: readonly number[]): number {
  return sum(a.map((one, place) => one * (b[place] ?? Number.NaN)))
}
