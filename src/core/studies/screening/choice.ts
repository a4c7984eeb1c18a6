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

export interface LeftOut {
  readonly material: string
  /** The condition that the rule chooses without it; null where none separates. */
  readonly condition: string | null
  readonly threshold: number | null
  /** Whether the material itself is then judged as what it is; null where it cannot be. */
  readonly right: boolean | null
}

/**
 * Each inert and reactive material left out in turn: the condition chosen and the threshold set without it, and the one
 * left out judged by them. What judges on the data that chose it flatters.
 * @param conditions of one route
 * @param step of thresholds, %
 * @returns in the order in which the conditions first name them
 */
export function leaveOneOut(conditions: readonly ScreenedCondition[], step: number): LeftOut[] {
  const materials = new Map(
    conditions.flatMap(({ means }) => means.means).map(({ material, class: own }) => [material, own]),
  )
  const judged = [...materials].filter(([, own]) => own !== 'weak')
  return judged.map(([material, own]) => {
    const rest = conditions.map(({ id, means }) => ({ id, means: without(means, material) }))
    const best = orderedConditions(rest, step)[0]
    if (best === undefined || best.threshold === null)
      return { material, condition: best?.id ?? null, threshold: null, right: null }
    const itself = conditions
      .find(({ id }) => id === best.id)
      ?.means.means.find((one) => one.material === material)
    return {
      material,
      condition: best.id,
      threshold: best.threshold,
      right: rightly(itself, own, best.threshold),
    }
  })
}

function rightly(
  itself: ConditionMeans['means'][number] | undefined,
  own: string,
  threshold: number,
): boolean | null {
  if (itself === undefined || (itself.above && itself.value < threshold)) return null
  return threshold <= itself.value === (own === 'reactive')
}

function without(means: ConditionMeans, material: string): ConditionMeans {
  return { ...means, means: means.means.filter((one) => one.material !== material) }
}
