/** A material or a laboratory left out: what the others choose, and whether it is then judged rightly. */
import { orderedConditions, type ScreenedCondition } from './choice.ts'
import type { MaterialMean } from './material-means.ts'

/** Something that is left out, and the study without it. */
export interface LeavingOut {
  /** Code of the material or the laboratory. */
  readonly left: string
  /** Conditions of one route by all the others. */
  readonly rest: readonly ScreenedCondition[]
  /** The same by what is left out alone. */
  readonly itself: readonly ScreenedCondition[]
}

export interface LeftOut {
  readonly left: string
  /** The condition that the rule chooses without it; null where none is left. */
  readonly condition: string | null
  readonly threshold: number | null
  /** Its inert and reactive materials, and whether each is then judged as what it is; null where it cannot be. */
  readonly judged: readonly { readonly material: string; readonly right: boolean | null }[]
}

/**
 * Each part of a study left out in turn: the condition chosen and the threshold set without it, and what it holds judged by
 * them. What judges on the data that chose it flatters.
 * @param parts by material (`withoutEachMaterial`), or by laboratory
 * @param step of thresholds, %
 */
export function leaveOneOut(parts: readonly LeavingOut[], step: number): LeftOut[] {
  return parts.map(({ left, rest, itself }) => {
    const best = orderedConditions(rest, step)[0]
    const threshold = best?.threshold ?? null
    const there = itself.find(({ id }) => id === best?.id)?.means.means ?? []
    return {
      left,
      condition: best?.id ?? null,
      threshold,
      judged: materialsOf(itself).map(([material, own]) => ({
        material,
        right: rightly(
          there.find((one) => one.material === material),
          own,
          threshold,
        ),
      })),
    }
  })
}

/**
 * A study without each of its inert and reactive materials.
 * @param conditions of one route
 * @returns in the order in which the conditions first name them
 */
export function withoutEachMaterial(conditions: readonly ScreenedCondition[]): LeavingOut[] {
  const only = (isKept: (one: MaterialMean) => boolean) =>
    conditions.map(({ id, means }) => ({ id, means: { ...means, means: means.means.filter(isKept) } }))
  return materialsOf(conditions).map(([left]) => ({
    left,
    rest: only(({ material }) => material !== left),
    itself: only(({ material }) => material === left),
  }))
}

function materialsOf(conditions: readonly ScreenedCondition[]): [string, MaterialMean['class']][] {
  const all = conditions.flatMap(({ means }) => means.means)
  return [...new Map(all.map(({ material, class: own }) => [material, own]))].filter(
    ([, own]) => own !== 'weak',
  )
}

function rightly(
  itself: MaterialMean | undefined,
  own: MaterialMean['class'],
  threshold: number | null,
): boolean | null {
  if (itself === undefined || threshold === null || (itself.above && itself.value < threshold)) return null
  return threshold <= itself.value === (own === 'reactive')
}
