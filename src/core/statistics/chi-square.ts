/** The chi-square distribution, and the tests that ask it: a variance against a known one, counts against expected ones. */
import { continuedFraction } from './continued-fraction.ts'
import { logGamma } from './log-gamma.ts'
import { increasingRoot } from './increasing-root.ts'
import { quantile } from './distributions.ts'

/**
 * Probability that a chi-square variable is not above x.
 * @param x zero or more
 * @param df degrees of freedom, above zero, not necessarily whole
 * @returns from 0 to 1, about twelve digits; 0 below zero
 * Source: DLMF 8.11.4 below the mean, 8.9.2 beyond (from memory).
 */
export function chiSquareCumulative(x: number, df: number): number {
  if (x <= 0) return 0
  const [a, z] = [df / 2, x / 2]
  const front = Math.exp(a * Math.log(z) - z - logGamma(a))
  if (a + 1 < z) {
    // DLMF 8.9.2: Γ(a, z) = e^−z z^a / (z + 1 − a − 1(1 − a)/(z + 3 − a − …)).
    const first = z + 1 - a
    const fraction = continuedFraction((step) => ({
      over: (-step * (step - a)) / (step === 1 ? first : 1),
      plus: first + 2 * step,
    }))
    return 1 - front / (first * fraction)
  }
  // DLMF 8.11.4: γ(a, z) = e^−z z^a Σ z^k / (a (a + 1) … (a + k)).
  let [term, sum] = [1 / a, 1 / a]
  for (let k = 1; sum * 1e-16 < term; k += 1) {
    term *= z / (a + k)
    sum += term
  }
  return front * sum
}

/**
 * Quantile of the chi-square distribution.
 * @param p probability to the left, above 0 and below 1
 * @param df degrees of freedom, above zero
 * @returns about nine digits
 */
export function chiSquareQuantile(p: number, df: number): number {
  // Wilson and Hilferty 1931 as the first guess (from memory); the logarithm keeps the root above zero.
  const guess = df * Math.max(0.01, 1 - 2 / (9 * df) + quantile(p) * Math.sqrt(2 / (9 * df))) ** 3
  return Math.exp(increasingRoot((log) => chiSquareCumulative(Math.exp(log), df) - p, Math.log(guess)))
}

export interface ChiSquareTest {
  readonly statistic: number
  readonly df: number
  /** Probability of a statistic as small, or as large, by chance. */
  readonly pSmall: number
  readonly pLarge: number
}

/**
 * A scatter against a known one.
 * @param standardDeviation,known in one unit, the known one above zero
 * @param df degrees of freedom of the first
 * Source: NIST/SEMATECH e-Handbook, 7.2.3 (from memory).
 */
export function varianceTest(standardDeviation: number, known: number, df: number): ChiSquareTest {
  return tested(df * (standardDeviation / known) ** 2, df)
}

/**
 * Counts against those expected.
 * @param counts how often each was seen
 * @param expected shares, of one sum with `counts` after scaling; each above zero
 * @throws RangeError for lists of different length
 * Source: Pearson 1900; NIST/SEMATECH e-Handbook, 1.3.5.15 (from memory).
 */
export function countsTest(counts: readonly number[], expected: readonly number[]): ChiSquareTest {
  if (counts.length !== expected.length)
    throw new RangeError(`countsTest needs lists of one length, got ${counts.length} and ${expected.length}`)
  const [total, shares] = [counts, expected].map((list) => list.reduce((sum, one) => sum + one, 0)) as [
    number,
    number,
  ]
  const statistic = counts.reduce((sum, count, place) => {
    const wanted = ((expected[place] ?? 0) * total) / shares
    return sum + (count - wanted) ** 2 / wanted
  }, 0)
  return tested(statistic, counts.length - 1)
}

function tested(statistic: number, df: number): ChiSquareTest {
  const pSmall = chiSquareCumulative(statistic, df)
  return { statistic, df, pSmall, pLarge: 1 - pSmall }
}
