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
 * @returns in the order of the first condition's materials
 */
export function leaveOneOut(conditions: readonly ScreenedCondition[], step: number): LeftOut[] {
  const materials = conditions[0]?.means.means.filter((one) => one.class !== 'weak') ?? []
  return materials.map(({ material, class: own }) => {
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

/**
 * How often each condition comes first when the materials are drawn anew, class by class, with replacement.
 * @param conditions of one route, all over the same materials
 * @param resamples how many draws
 * @param chance numbers from 0 to below 1
 * @returns share by id, of those that came first at all, most often first
 * Source: Efron's bootstrap (Efron and Tibshirani 1993, An Introduction to the Bootstrap; from memory), the unit being the material.
 */
export function firstPlaces(
  conditions: readonly ScreenedCondition[],
  resamples: number,
  chance: () => number,
): { readonly id: string; readonly share: number }[] {
  const classes = (['inert', 'reactive'] as const).map(
    (own) =>
      conditions[0]?.means.means.filter((one) => one.class === own).map(({ material }) => material) ?? [],
  )
  const byMaterial = conditions.map(({ id, means }) => ({
    id,
    own: new Map(means.means.map((one) => [one.material, one])),
  }))
  const counts = new Map<string, number>()
  for (let draw = 0; draw < resamples; draw += 1) {
    const drawn = classes.map((all) => all.map(() => all[Math.floor(chance() * all.length)] ?? ''))
    const best = firstOf(byMaterial, drawn)
    if (best !== null) counts.set(best, (counts.get(best) ?? 0) + 1)
  }
  return [...counts]
    .map(([id, count]) => ({ id, share: count / resamples }))
    .toSorted((a, b) => b.share - a.share || (a.id < b.id ? -1 : 1))
}

function firstOf(
  conditions: readonly { readonly id: string; readonly own: ReadonlyMap<string, Placed> }[],
  [inert = [], reactive = []]: readonly (readonly string[])[],
): string | null {
  let best: { id: string; wrong: number; ratio: number } | null = null
  for (const { id, own } of conditions) {
    const of = (names: readonly string[]) => names.flatMap((name) => own.get(name) ?? [])
    const [lows, highs] = [of(inert), of(reactive)]
    if (lows.length === 0 || highs.length === 0) continue
    const { wrongSide, ratio } = separation(lows, highs)
    const here = { id, wrong: wrongSide.length, ratio: ratio ?? 0 }
    if (best === null || here.wrong < best.wrong || (here.wrong === best.wrong && best.ratio < here.ratio))
      best = here
  }
  return best?.id ?? null
}
