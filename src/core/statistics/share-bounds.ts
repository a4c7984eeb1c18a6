/** Exact bounds of a share from counts. */
import { incompleteBeta } from './incomplete-beta.ts'
import { increasingRoot } from './increasing-root.ts'

/**
 * Largest share that k of n still allow, one-sided.
 * @param k how many of them, a whole number from 0 to n
 * @param n one or more
 * @param confidence one-sided, between 0 and 1
 * @returns 0 to 1; 1 where k is n
 * Source: Clopper and Pearson 1934, Biometrika 26, 404-413 (from memory); for k = 0 it is 1 − (1 − confidence)^(1/n).
 */
export function largestShare(k: number, n: number, confidence: number): number {
  if (k === n) return 1
  if (k === 0) return -Math.expm1(Math.log1p(-confidence) / n)
  // P(X ≤ k) = I(1 − p; n − k, k + 1) falls as p grows; the logit keeps the root between 0 and 1.
  const root = increasingRoot(
    (logit) => 1 - confidence - incompleteBeta(1 / (1 + Math.exp(logit)), n - k, k + 1),
    Math.log((k + 0.5) / (n - k + 0.5)),
  )
  return 1 / (1 + Math.exp(-root))
}

/**
 * How many must be looked at, with none of them counted, before the share is known to be below a bound.
 * @param share between 0 and 1
 * @param confidence one-sided, between 0 and 1
 * @returns whole number, 1 or more
 * Note: 29 for 10 % and 59 for 5 %, at 95 %.
 */
export function numberForShare(share: number, confidence: number): number {
  // The product first: 1e-9 takes out rounding where the quotient is whole.
  return Math.ceil(Math.log1p(-confidence) / Math.log1p(-share) - 1e-9)
}
