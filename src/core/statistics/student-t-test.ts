/** Whether two sets of results have the same mean. */
import { mean, standardDeviation } from './descriptive.ts'
import { cumulative, quantile } from './distributions.ts'

/** With a common standard deviation, or with each set's own (Welch). */
export type TForm = 'pooled' | 'welch'

export interface TwoSampleT {
  readonly form: TForm
  /** Mean of the first less mean of the second, in their unit. */
  readonly difference: number
  readonly standardError: number
  /** Not whole with Welch's form. */
  readonly df: number
  readonly t: number
  /** Two-sided. */
  readonly p: number
  /** Interval of the difference, in its unit. */
  readonly interval: readonly [number, number]
}

/**
 * Two-sample t test.
 * @param first results in one unit
 * @param second results in the same unit, of other samples
 * @param choice which form, and the confidence of the interval between 0 and 1
 * @returns null with fewer than two results on a side, and where neither set scatters
 * Notes: 1. two-sided; 2. Welch's degrees of freedom are those of Satterthwaite with n − 1; some agencies'
 * manuals print the older form with n + 1, less 2 (from memory), which differs little.
 * Source: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.3 (from memory).
 */
export function twoSampleT(
  first: readonly number[],
  second: readonly number[],
  choice: { readonly form: TForm; readonly confidence: number },
): TwoSampleT | null {
  if (first.length < 2 || second.length < 2) return null
  const { standardError, df } = choice.form === 'pooled' ? pooled(first, second) : welch(first, second)
  const difference = mean(first) - mean(second)
  if (standardError === 0) return null
  const t = difference / standardError
  const reach = quantile((1 + choice.confidence) / 2, df) * standardError
  return {
    form: choice.form,
    difference,
    standardError,
    df,
    t,
    p: 2 * cumulative(-Math.abs(t), df),
    interval: [difference - reach, difference + reach],
  }
}

interface Uncertain {
  readonly standardError: number
  readonly df: number
}

function pooled(first: readonly number[], second: readonly number[]): Uncertain {
  const df = first.length + second.length - 2
  const squares = [first, second].map((values) => (values.length - 1) * standardDeviation(values) ** 2)
  const variance = squares.reduce((total, one) => total + one, 0) / df
  return { standardError: Math.sqrt(variance * (1 / first.length + 1 / second.length)), df }
}

function welch(first: readonly number[], second: readonly number[]): Uncertain {
  const [a, b] = [varianceOfMean(first), varianceOfMean(second)]
  const total = a + b
  // Satterthwaite 1946, Biometrics Bulletin 2, 110-114 (from memory).
  const df = total ** 2 / (a ** 2 / (first.length - 1) + b ** 2 / (second.length - 1))
  return { standardError: Math.sqrt(total), df }
}

function varianceOfMean(values: readonly number[]): number {
  return standardDeviation(values) ** 2 / values.length
}
