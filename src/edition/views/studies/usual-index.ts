/** The same materials by the index in use and by the best condition. */
import { twoByTwo } from '../../../core/studies/screening/changed-verdicts.ts'
import type { MaterialMean } from '../../../core/studies/screening/material-means.ts'
import type { ConditionScreen, ScreenedRoute } from '../../../core/studies/screening/screening.ts'
import { written } from '../../../words/as-written.ts'
import { number, plainNumber } from '../../../words/numbers.ts'
import type { StudyEntry } from '../../shape/study-entry.ts'
import { nameOf } from './screened-name.ts'

export interface UsualView {
  readonly heading: string
  readonly classes: readonly {
    readonly name: string
    readonly bothPass: string
    readonly usualOnly: string
    readonly newOnly: string
    readonly bothFail: string
  }[]
  readonly sentence: string
}

/**
 * Verdicts by the index in use beside those by the best condition of a route.
 * @returns null where the study names no index in use, or nothing sets a threshold
 */
export function usualView(
  study: StudyEntry,
  route: ScreenedRoute,
  all: readonly ScreenedRoute[],
): UsualView | null {
  const { usual } = study.record
  const best = route.conditions[0]
  const strength = all.find(({ property }) => property === 'strength-activity-index')
  if (usual === undefined || best === undefined || best.threshold === null || strength === undefined)
    return null
  const { threshold } = best
  const ages = strength.conditions.filter(
    ({ condition, age }) =>
      condition === usual.condition && usual.ages.some(({ hours }) => hours === age.hours),
  )
  const meanIn = (screen: ConditionScreen, material: string) =>
    screen.means.means.find((one) => one.material === material)
  const passes = (one: MaterialMean | undefined, limit: number) => one !== undefined && limit <= one.value
  const isOpen = (one: MaterialMean) => one.above && one.value < threshold
  const open = best.means.means.filter(isOpen).map(({ material }) => material)
  const judged = best.means.means
    .filter((one) => !isOpen(one))
    .filter(({ material }) => ages.some((screen) => meanIn(screen, material) !== undefined))
    .map((one) => ({
      material: one.material,
      class: one.class,
      first: ages.some((screen) => passes(meanIn(screen, one.material), usual.limit.value)),
      second: passes(one, threshold),
    }))
  const inert = twoByTwo(judged.filter((one) => one.class === 'inert'))
  const limitWords = `${written(usual.limit)} at ${usual.ages.map(({ text }) => text).join(' or ')}`
  return {
    heading: `${limitWords} by the index in use, against ${number(threshold, 0)} % at ${nameOf(study, best)}`,
    classes: (['inert', 'weak', 'reactive'] as const).map((name) => {
      const cells = twoByTwo(judged.filter((one) => one.class === name))
      const list = (materials: readonly string[]) =>
        materials.length === 0 ? '0' : `${materials.length}: ${materials.join(' ')}`
      return {
        name,
        bothPass: list(cells.bothPass),
        usualOnly: list(cells.firstOnly),
        newOnly: list(cells.secondOnly),
        bothFail: list(cells.bothFail),
      }
    }),
    sentence: `${inert.firstOnly.length} inert materials change from pass to fail and ${inert.secondOnly.length} the other way (exact paired test, two-sided p = ${plainNumber(inert.p, 2)}).${open.length === 0 ? '' : ` Not decided by the threshold, and left out: ${open.join(', ')}.`}`,
  }
}
