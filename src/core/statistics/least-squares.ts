/** A straight line through points, the interval of its slope, and what it foretells. */
import { mean, sum } from './descriptive.ts'
import { quantile } from './distributions.ts'

export interface Line {
  readonly n: number
  readonly meanX: number
  readonly meanY: number
  readonly slope: number
  /** Of the points from the line, n − 2 degrees of freedom. */
  readonly residualDeviation: number
  /** Sum of squared distances of x from its mean. */
  readonly squaresX: number
  /** Correlation of x and y; null where one of them does not scatter. */
  readonly r: number | null
  readonly residuals: readonly number[]
}

/**
 * The line of least squares.
 * @param xs,ys of equal length, three or more; the x not all alike
 * @throws RangeError for fewer points, and for x all alike
 * Source: NIST/SEMATECH e-Handbook of Statistical Methods, 4.4.3.1 (from memory).
 */
export function lineThrough(xs: readonly number[], ys: readonly number[]): Line {
  const n = xs.length
  if (n < 3 || ys.length !== n) throw new RangeError(`lineThrough needs three points or more, got ${n}`)
  const [meanX, meanY] = [mean(xs), mean(ys)]
  const [dx, dy] = [xs.map((x) => x - meanX), ys.map((y) => y - meanY)]
  const squaresX = sum(dx.map((x) => x * x))
  if (squaresX === 0) throw new RangeError('lineThrough needs different x, got one')
  const slope = sum(dx.map((x, place) => x * (dy[place] ?? 0))) / squaresX
  const residuals = dy.map((y, place) => y - slope * (dx[place] ?? 0))
  const [left, squaresY] = [residuals, dy].map((list) => sum(list.map((one) => one * one))) as [
    number,
    number,
  ]
  return {
    n,
    meanX,
    meanY,
    slope,
    residualDeviation: Math.sqrt(left / (n - 2)),
    squaresX,
    r: squaresY === 0 ? null : slope * Math.sqrt(squaresX / squaresY),
    residuals,
  }
}

/**
 * Half width of the interval of a slope.
 * @param level of confidence, between 0 and 1
 * @param phi correlation of neighbouring residuals, from 0; the line then rests on fewer points
 * @returns half width in the unit of the slope, and the degrees of freedom taken
 * Source: Student's interval, NIST/SEMATECH e-Handbook, 4.4.3.1; variance times (1 + φ)/(1 − φ) and as many
 * fewer points, the large-sample form (from memory), whose coverage the tests simulate.
 */
export function slopeInterval(line: Line, level: number, phi = 0): { half: number; df: number } {
  const inflation = (1 + phi) / (1 - phi)
  const df = Math.max(1, line.n / inflation - 2)
  // The residuals of a line are the smaller, the more they are alike: what n − 2 stands for is n/inflation − 2.
  const variance =
    ((line.residualDeviation ** 2 * (line.n - 2)) / Math.max(1, line.n - 2 * inflation)) * inflation
  return { half: quantile((1 + level) / 2, df) * Math.sqrt(variance / line.squaresX), df }
}

/**
 * What the line says of a new point.
 * @param x of the new point
 * @param level of confidence, between 0 and 1
 * @returns the value on the line and the half width of the interval that a single new value falls into
 * Source: prediction interval, NIST/SEMATECH e-Handbook, 4.5.1.2 (from memory).
 */
export function predicted(line: Line, x: number, level: number): { value: number; half: number } {
  const spread = Math.sqrt(1 + 1 / line.n + (x - line.meanX) ** 2 / line.squaresX)
  return {
    value: line.meanY + line.slope * (x - line.meanX),
    half: quantile((1 + level) / 2, line.n - 2) * line.residualDeviation * spread,
  }
}

/**
 * Probability that no correlation would give one as strong, two-sided.
 * @param r from −1 to 1
 * @param n pairs, three or more
 * @param cumulative of Student's t
 * @returns from 0 to 1
 * Source: t = r √((n − 2)/(1 − r²)), Fisher 1915 (from memory).
 */
export function correlationProbability(
  r: number,
  n: number,
  cumulative: (t: number, df: number) => number,
): number {
  if (1 <= Math.abs(r)) return 0
  return 2 * cumulative(-Math.abs(r) * Math.sqrt((n - 2) / (1 - r * r)), n - 2)
}
