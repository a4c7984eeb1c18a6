/** Whether two sets of results scatter alike. */
import { standardDeviation } from './descriptive.ts'
import { incompleteBeta } from './incomplete-beta.ts'
import { increasingRoot } from './increasing-root.ts'

export interface FTest {
  /** Larger variance over smaller, 1 or more; Infinity where one set does not scatter at all. */
  readonly ratio: number
  /** Degrees of freedom of the larger variance, then of the smaller. */
  readonly df: readonly [number, number]
  /** Two-sided: twice the smaller tail. */
  readonly p: number
}

/**
 * F test of two variances.
 * @param first results in one unit
 * @param second results in the same unit, of other samples
 * @returns null with fewer than two results on a side, and where neither set scatters
 * Notes: 1. two-sided, because nobody says beforehand which side scatters more; at a level of 1 % the ratio is
 * thus held against the 99.5 % point, as tables for comparing an agency's results with a contractor's do
 * (common practice, from memory); 2. assumes normal results that do not depend on each other.
 * Source: Snedecor's variance ratio; NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.9 (from memory).
 */
export function fTest(first: readonly number[], second: readonly number[]): FTest | null {
  if (first.length < 2 || second.length < 2) return null
  const sides = [first, second]
    .map((values) => ({ variance: standardDeviation(values) ** 2, df: values.length - 1 }))
    .sort((a, b) => b.variance - a.variance)
  const [larger, smaller] = [sides[0], sides[1]]
  if (larger === undefined || smaller === undefined || larger.variance === 0) return null
  const ratio = larger.variance / smaller.variance
  const above = varianceRatioAbove(ratio, larger.df, smaller.df)
  return { ratio, df: [larger.df, smaller.df], p: 2 * Math.min(above, 1 - above) }
}

/**
 * Chance that a variance ratio exceeds a value where both variances are the same.
 * @param ratio zero or more, Infinity allowed
 * @param dfAbove degrees of freedom of the upper variance, above zero
 * @param dfBelow degrees of freedom of the lower variance, above zero
 * @returns probability from 0 to 1
 * Source: NIST Digital Library of Mathematical Functions, 8.17 (from memory): the regularized incomplete beta
 * function at dfBelow / (dfBelow + dfAbove ratio).
 */
export function varianceRatioAbove(ratio: number, dfAbove: number, dfBelow: number): number {
  if (ratio === Number.POSITIVE_INFINITY) return 0
  return incompleteBeta(dfBelow / (dfBelow + dfAbove * ratio), dfBelow / 2, dfAbove / 2)
}

/**
 * Value that a variance ratio stays below with a given probability where both variances are the same.
 * @param p probability to the left, above 0 and below 1
 * @param dfAbove degrees of freedom of the upper variance, above zero
 * @param dfBelow degrees of freedom of the lower variance, above zero
 * @returns about nine digits
 */
export function varianceRatioQuantile(p: number, dfAbove: number, dfBelow: number): number {
  // The logarithm keeps the root above zero; far out the smaller tail keeps its digits.
  const distance = (log: number) => {
    const ratio = Math.exp(log)
    return p < 0.5
      ? varianceRatioAbove(1 / ratio, dfBelow, dfAbove) - p
      : 1 - p - varianceRatioAbove(ratio, dfAbove, dfBelow)
  }
  return Math.exp(increasingRoot(distance, 0))
}
