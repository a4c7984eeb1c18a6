/** Errors of both classes over a range of thresholds. */
import { type ErrorsAsked, type ErrorsAtThreshold, errorsAt } from './errors-at-threshold.ts'
import type { ConditionMeans } from './material-means.ts'

export interface ThresholdRange {
  /** Index, %, above zero; the lower end first. */
  readonly from: number
  readonly to: number
  /** Thresholds at equal ratios, both ends among them; two or more. */
  readonly points: number
}

/**
 * Errors at thresholds from one end of a range to the other: at equal ratios, and on both sides of each material's index.
 * @param means of all materials at the condition; both classes among them
 * @param asked what is asked at each threshold
 * @param range of thresholds
 * @returns by rising threshold, none twice
 * @throws RangeError where one of the classes has no material
 * Note: counts change at a material's index alone. A material passes at its index and fails at the next number above it, so
 * both are in the curve and it steps between them.
 */
export function errorCurve(
  means: ConditionMeans,
  asked: ErrorsAsked,
  { from, to, points }: ThresholdRange,
): ErrorsAtThreshold[] {
  const ratio = (to / from) ** (1 / (points - 1))
  const regular = Array.from({ length: points - 2 }, (_, place) => from * ratio ** (place + 1))
  const steps = means.means
    .filter((one) => one.class !== 'weak')
    .flatMap(({ value }) => [value, value * (1 + Number.EPSILON)])
    .filter((value) => from < value && value < to)
  return [...new Set([from, ...regular, ...steps, to])]
    .toSorted((a, b) => a - b)
    .map((threshold) => errorsAt(means, threshold, asked))
}
