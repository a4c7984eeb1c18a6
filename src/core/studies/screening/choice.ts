/** The rule that orders conditions and sets a threshold, stated before readings are looked at. */
import type { ConditionMeans } from './material-means.ts'
import { type Placed, type Separation, separation } from './separation.ts'

/** A condition with its means, by the id that the study gives it. */
export interface ScreenedCondition {
  readonly id: string
  readonly means: ConditionMeans
}

export interface JudgedCondition {
  readonly id: string
  /** Null where a class has no material. */
  readonly separation: Separation | null
  /** Index, %; null without a gap to lie in. */
  readonly threshold: number | null
}

/**
 * Conditions, the best first: fewest materials on the wrong side of a cut, then the widest gap between the rest.
 * @param conditions in any order
 * @param step that thresholds are rounded to, %
 * @returns all of them; those without both classes last
 */
export function orderedConditions(conditions: readonly ScreenedCondition[], step: number): JudgedCondition[] {
  return conditions
    .map(({ id, means }): JudgedCondition => {
      const [inert, reactive] = [placed(means, 'inert'), placed(means, 'reactive')]
      if (inert.length === 0 || reactive.length === 0) return { id, separation: null, threshold: null }
      const found = separation(inert, reactive)
      return { id, separation: found, threshold: thresholdOf(found, step) }
    })
    .toSorted(
      (a, b) =>
        (a.separation?.wrongSide.length ?? Number.POSITIVE_INFINITY) -
          (b.separation?.wrongSide.length ?? Number.POSITIVE_INFINITY) ||
        (b.separation?.ratio ?? 0) - (a.separation?.ratio ?? 0) ||
        (a.id < b.id ? -1 : 1),
    )
}

/** Materials of a class at a condition, as separation takes them. */
export function placed(means: ConditionMeans, own: 'inert' | 'reactive'): Placed[] {
  return means.means.filter((one) => one.class === own)
}

/**
 * Threshold in the middle of the gap on the log scale, rounded.
 * @param found separation at the condition
 * @param step that it is rounded to, %, above zero
 * @returns index, %; null with two materials or more on the wrong side, and without a gap
 * Note: rounding can carry a threshold out of a narrow gap; the errors at it say so.
 */
export function thresholdOf(
  { wrongSide, ratio, highestInert, lowestReactive }: Separation,
  step: number,
): number | null {
  if (1 < wrongSide.length || ratio === null || ratio <= 1) return null
  return Math.max(step, Math.round(Math.sqrt(highestInert.value * lowestReactive.value) / step) * step)
}
