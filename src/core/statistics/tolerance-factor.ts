/** One-sided tolerance factor of a normal sample, for conformity by variables. */
import { quantile } from './distributions.ts'
import { increasingRoot } from './increasing-root.ts'
import { noncentralStudent, spreadOfDeviation } from './noncentral-student.ts'

const known = new Map<string, number>()

/**
 * One-sided tolerance factor: the k for which at least the share of a normal population lies above mean − k
 * s, with that confidence.
 * @param n results, at least 2
 * @param share of the population, between 0 and 1; 0.90 for a characteristic value at the 10 % point
 * @param confidence between 0 and 1; 0.95 for a consumer's risk of 5 %
 * @returns k to about eight digits; remembered between calls
 * @throws RangeError outside these ranges
 * Note: exact, by the noncentral t distribution. The example of NIST's handbook is approximate: it prints
 * 1.8752 where this gives 1.87395 (n 43, share 0.90, confidence 0.99).
 * Source: ISO 16269-6, formula (A.13), read second-hand; R package tolerance, K.factor; NIST/SEMATECH
 * e-Handbook of Statistical Methods, 7.2.6.3.
 */
export function toleranceFactor(n: number, share: number, confidence: number): number {
  if (!(2 <= n && 0 < share && share < 1 && 0 < confidence && confidence < 1))
    throw new RangeError(
      `toleranceFactor needs n of 2 or more and shares between 0 and 1, got ${n}, ${share}, ${confidence}`,
    )
  const key = `${n}|${share}|${confidence}`
  const remembered = known.get(key)
  if (remembered !== undefined) return remembered
  const root = Math.sqrt(n)
  const noncentrality = quantile(share) * root
  const spread = spreadOfDeviation(n - 1)
  // ISO 16269-6, formula (A.13): k = t'(confidence; n − 1, z √n) / √n, t' the noncentral Student quantile.
  const factor =
    increasingRoot((t) => noncentralStudent(t, noncentrality, spread) - confidence, noncentrality) / root
  known.set(key, factor)
  return factor
}
