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

/** Room about the outermost materials, as a ratio. */
const ROOM = 1.1
/** Thresholds of a table, about. */
const ROWS = 16

/**
 * From below the lowest inert or reactive index to above the highest.
 * @param means of all materials at the condition; both classes among them
 * @param threshold that the range must hold; null for none
 * @returns index, %, both ends
 */
export function thresholdRange(means: ConditionMeans, threshold: number | null): [number, number] {
  const values = means.means.filter((one) => one.class !== 'weak').map(({ value }) => value)
  const all = threshold === null ? values : [...values, threshold]
  return [Math.min(...all) / ROOM, Math.max(...all) * ROOM]
}

/**
 * Thresholds for a table: multiples of a step over that range, and the threshold that was set.
 * @param means of all materials at the condition; both classes among them
 * @param threshold that was set; null for none
 * @param step %, above zero; the multiples are so wide that their number stays small
 * @returns index, %, rising
 */
export function roundThresholds(means: ConditionMeans, threshold: number | null, step: number): number[] {
  const [from, to] = thresholdRange(means, threshold)
  const wide = step * Math.max(1, Math.ceil((to - from) / step / ROWS))
  const first = Math.ceil(from / wide)
  const regular = Array.from(
    { length: Math.max(0, Math.floor(to / wide) - first + 1) },
    (_, place) => (first + place) * wide,
  )
  return [...new Set(threshold === null ? regular : [...regular, threshold])].toSorted((a, b) => a - b)
}
