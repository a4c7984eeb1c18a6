/** How far neighbours of a series are alike, and how many independent values the series is worth. */
import { mean } from './descriptive.ts'

/**
 * Correlation of neighbours.
 * @param values in order, in one unit
 * @returns from −1 to 1; null without scatter, and for fewer than two values
 * Note: with few values it lies below the true one: see `correlationOfNeighbours`.
 * Source: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.12.
 */
export function lag1(values: readonly number[]): number | null {
  // The mean of equal values may be off by dust, which is no scatter.
  if (values.length < 2 || values.every((value) => value === values[0])) return null
  const centre = mean(values)
  const deviations = values.map((value) => value - centre)
  const squares = deviations.reduce((sum, deviation) => sum + deviation * deviation, 0)
  if (squares === 0) return null
  return deviations.slice(1).reduce((sum, one, place) => sum + one * (deviations[place] ?? 0), 0) / squares
}

/** Beyond this a series of the lengths at hand tells nothing of its mean: own choice. */
const MOST = 0.9

/**
 * Estimate of the true correlation of neighbours.
 * @param found of `lag1`
 * @param n values
 * @param fitted parameters taken out of the values: 1 for a mean, 2 for a line
 * @returns from 0 to 0.9: fewer than five values tell nothing, and alternating ones count as independent
 * Note: own choice to leave negative estimates out, so that nothing is worth more than n values.
 * Source: bias −(1 + 3φ)/n about a mean, Kendall 1954 and Marriott and Pope 1954, Biometrika 41, 390-404 (from
 * memory); about a line −(2 + 4φ)/n is an own approximation, simulated in the tests.
 */
export function correlationOfNeighbours(found: number, n: number, fitted: 1 | 2 = 1): number {
  if (n < 5) return 0
  const raised = (n * found + fitted) / (n - 2 - fitted)
  return Math.min(MOST, Math.max(0, raised))
}

/**
 * Independent values that the mean of a series is worth.
 * @param n values
 * @param phi correlation of neighbours, from 0 to below 1
 * @returns above zero, at most n
 * Source: variance of a mean of a series of the first order, Bayley and Hammersley 1946, J. R. Stat. Soc. Suppl.
 * 8, 184-197 (from memory), summed exactly.
 */
export function effectiveNumber(n: number, phi: number): number {
  if (phi === 0 || n < 2) return n
  // n / (1 + 2 Σ (1 − k/n) φ^k), with the sum in closed form.
  const sum = (phi / (1 - phi)) * (1 - (1 - phi ** n) / (n * (1 - phi)))
  return n / (1 + 2 * sum)
}
