/** Constants of control charts, computed from the normal distribution rather than read from a table. */
import { cumulative } from './distributions.ts'

/**
 * Expected standard deviation of n normal values over the true one.
 * @param n 2 or more
 * @returns dimensionless, below 1
 * @throws RangeError for fewer than 2
 * Source: c₄ = √(2/(n − 1)) Γ(n/2)/Γ((n − 1)/2), Montgomery, appendix VI (from memory).
 */
export function c4(n: number): number {
  if (!(2 <= n)) throw new RangeError(`c4 needs 2 values or more, got ${n}`)
  // Γ(1)/Γ(1/2) for n = 2; Γ(x + 1) = x Γ(x) leads from one n to the next.
  let quotient = 1 / Math.sqrt(Math.PI)
  for (let m = 2; m < n; m += 1) quotient = (m - 1) / 2 / quotient
  return Math.sqrt(2 / (n - 1)) * quotient
}

/**
 * Expected range of n standard normal values.
 * @param n 2 or more
 * @returns in standard deviations; 2/√π for two values
 * @throws RangeError for fewer than 2
 * Source: Tippett 1925, Biometrika 17, 364-387 (from memory).
 */
export function d2(n: number): number {
  return rangeMoments(n).mean
}

/**
 * Standard deviation of the range of n standard normal values.
 * @param n 2 or more
 * @returns in standard deviations
 * @throws RangeError for fewer than 2
 * Source: as of `d2`.
 */
export function d3(n: number): number {
  return rangeMoments(n).deviation
}

/**
 * Factor of the mean range that gives the upper limit of ranges, D₄.
 * @param n 2 or more
 * @returns 3.267 for two values
 * @throws RangeError for fewer than 2
 * Source: D₄ = 1 + 3 d₃/d₂, Montgomery, appendix VI (from memory).
 */
export function upperRangeFactor(n: number): number {
  return 1 + (3 * d3(n)) / d2(n)
}

interface Moments {
  readonly mean: number
  readonly deviation: number
}

/** Two values have closed forms. */
const known = new Map<number, Moments>([
  [2, { mean: 2 / Math.sqrt(Math.PI), deviation: Math.sqrt(2 - 4 / Math.PI) }],
])
/** Ranges beyond this and values beyond ±8 have no weight in double precision for the n of any chart. */
const [WIDEST, FARTHEST] = [14, 8]
const STEP = 1 / 32

/** E[R] = ∫ P(R > w) dw, E[R²] = 2 ∫ w P(R > w) dw, over w from zero, by Simpson's rule. */
function rangeMoments(n: number): Moments {
  if (!(2 <= n)) throw new RangeError(`d2 and d3 need 2 values or more, got ${n}`)
  const before = known.get(n)
  if (before !== undefined) return before
  let [first, second] = [0, 0]
  const steps = WIDEST / STEP
  for (let step = 0; step <= steps; step += 1) {
    const weight = (step === 0 || step === steps ? 1 : step % 2 === 1 ? 4 : 2) * (STEP / 3)
    const beyond = rangeBeyond(step * STEP, n)
    first += weight * beyond
    second += weight * 2 * step * STEP * beyond
  }
  const moments = { mean: first, deviation: Math.sqrt(second - first * first) }
  known.set(n, moments)
  return moments
}

/** P(R > w) = 1 − n ∫ φ(x) (Φ(x + w) − Φ(x))^(n − 1) dx; the trapezoidal rule is exact for such tails. */
function rangeBeyond(width: number, n: number): number {
  let within = 0
  for (let x = -FARTHEST - width; x <= FARTHEST; x += STEP)
    within += Math.exp((-x * x) / 2) * (cumulative(x + width) - cumulative(x)) ** (n - 1)
  return 1 - (n * within * STEP) / Math.sqrt(2 * Math.PI)
}
