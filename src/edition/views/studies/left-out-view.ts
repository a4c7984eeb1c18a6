/** What a route's choice and threshold owe to a single material, or to a single laboratory. */
import type { LeftOut } from '../../../core/studies/screening/left-out.ts'
import type { ScreenedRoute } from '../../../core/studies/screening/screening.ts'
import { number } from '../../../words/numbers.ts'
import type { StudyEntry } from '../../shape/study-entry.ts'
import { nameOf } from './screened-name.ts'

export interface LeftOutWords {
  /** Of the materials. */
  readonly leftOut: string
  /** A sentence for each laboratory; none where there is but one. */
  readonly laboratoriesOut: readonly string[]
}

export function leftOutWords(study: StudyEntry, route: ScreenedRoute): LeftOutWords {
  return {
    leftOut: materialSentence(study, route),
    laboratoriesOut: route.laboratoriesOut.map((one) => laboratorySentence(study, route, one)),
  }
}

function conditionName(study: StudyEntry, { conditions }: ScreenedRoute, id: string | null): string {
  const screen = conditions.find((one) => one.id === id)
  return screen === undefined ? 'none' : nameOf(study, screen)
}

function materialSentence(study: StudyEntry, route: ScreenedRoute): string {
  const { leftOut, conditions } = route
  const judged = leftOut.flatMap((one) => one.judged)
  const moved = leftOut.filter(({ condition }) => condition !== conditions[0]?.id)
  const movedTo = moved.map(
    ({ left, condition }) => `without ${left} it is ${conditionName(study, route, condition)}`,
  )
  return [
    `${judged.filter(({ right }) => right === true).length} of ${leftOut.length} materials are judged rightly by the condition and threshold that the others give`,
    namedAs('wrongly', judged, false),
    namedAs('not decided', judged, null),
    movedTo.length === 0
      ? '. The choice of condition is the same each time.'
      : `. The choice of condition changes: ${movedTo.join('; ')}.`,
  ].join('')
}

function laboratorySentence(
  study: StudyEntry,
  route: ScreenedRoute,
  { left, condition, threshold, judged }: LeftOut,
): string {
  const name = conditionName(study, route, condition)
  const without = `Without laboratory ${left} the choice is ${name}${condition === route.conditions[0]?.id ? ', as with it' : ''}`
  if (threshold === null) return `${without}, and no threshold can be set, so its results are not judged.`
  const right = judged.filter((one) => one.right === true).length
  return `${without}, and the threshold ${number(threshold, 0)} %. By its own results ${right} of ${judged.length} materials are then judged rightly${namedAs('wrongly', judged, false)}${namedAs('not decided', judged, null)}.`
}

/** "; wrongly: A1, A2". */
function namedAs(word: string, judged: LeftOut['judged'], right: boolean | null): string {
  const names = judged.filter((one) => one.right === right).map(({ material }) => material)
  return names.length === 0 ? '' : `; ${word}: ${names.join(', ')}`
}
