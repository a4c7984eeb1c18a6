/** The regularized incomplete beta function: the distribution of F, of shares, and of estimated shares. */
import { continuedFraction } from './continued-fraction.ts'
import { logGamma } from './log-gamma.ts'

/**
 * Probability that a beta variable is not above x.
 * @param x from 0 to 1; what lies beyond counts as the end
 * @param a,b shapes, above zero, not necessarily whole
 * @returns from 0 to 1, about twelve digits
 * Note: NaN for NaN.
 * Source: DLMF 8.17.22, continued fraction; symmetry 8.17.4 (from memory).
 */
export function incompleteBeta(x: number, a: number, b: number): number {
  if (x <= 0) return 0
  if (1 <= x) return 1
  // DLMF 8.17.4: the fraction converges fast below the mean only.
  if ((a + 1) / (a + b + 2) < x) return 1 - incompleteBeta(1 - x, b, a)
  const front = Math.exp(
    logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x) - Math.log(a),
  )
  return front / continuedFraction((step) => termOf(step, { x, a, b }))
}

/** DLMF 8.17.22: numerators d₁, d₂, … of 1 + d₁/(1 + d₂/(1 + …)). */
function termOf(
  step: number,
  { x, a, b }: { x: number; a: number; b: number },
): { over: number; plus: number } {
  const m = Math.floor(step / 2)
  const over =
    step % 2 === 0
      ? (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m))
      : (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1))
  return { over, plus: 1 }
}
