/** Width of the band between two classes beside their scatter. */
import { mean, standardDeviation } from '../../statistics/descriptive.ts'

/**
 * Z′: 1 − 3 (s₁ + s₂) / |x̄₁ − x̄₂|.
 * @param first,second two or more values each, on one scale
 * @returns at most 1; null with fewer than two on a side, and where the means are the same
 * Note: it rewards a class that happens to be alike, so it never ranks conditions here; on the log scale take logarithms first.
 * Source: Zhang, Chung and Oldenburg 1999, J. Biomol. Screen. 4, 67-73 (formula from memory).
 */
export function zPrime(first: readonly number[], second: readonly number[]): number | null {
  if (first.length < 2 || second.length < 2) return null
  const distance = Math.abs(mean(first) - mean(second))
  return distance === 0 ? null : 1 - (3 * (standardDeviation(first) + standardDeviation(second))) / distance
}
