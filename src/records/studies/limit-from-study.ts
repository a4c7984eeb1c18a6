/** The limits of a clause that names the study which set it, beside what that study shows. */
import type { Comparison } from '../../core/criteria/criterion.ts'
import type { Age } from '../../core/measure/age.ts'
import { type LimitAtCondition, limitAtCondition } from '../../core/studies/screening/limit-at-condition.ts'
import type { ScreenedRoute } from '../../core/studies/screening/screening.ts'
import type { Condition, Study } from '../schema/loaded-records.ts'
import { STUDY_LEVEL } from './screening-asked.ts'

/** Something that a clause's condition and the study's state differently, each as written. */
export interface ConditionDifference {
  readonly what:
    | 'condition'
    | 'replacement'
    | 'curing temperature'
    | 'w/cm'
    | 'quantity held constant'
    | 'curing'
    | 'age'
  readonly clause: string
  readonly study: string
}

export interface LimitFromStudy {
  /** Code of the study's condition. */
  readonly condition: string
  readonly age: Age
  /** Each limit as written, %, with what the study says of it; none where nothing was read there. */
  readonly limits: readonly (LimitAtCondition & { readonly limit: number; readonly written: string })[]
  readonly differences: readonly ConditionDifference[]
}

/**
 * @param clause a comparison, perhaps set by a study
 * @param study the record of that study, and its routes
 * @param condition the record of the clause's condition
 * @returns null where the clause names no condition of the study, or has no index, age or lower limit to compare
 * Note: a limit on a deviation or on a statistic is of another kind than a study's threshold.
 */
export function limitFromStudy(
  clause: Comparison,
  { record, routes }: { readonly record: Study; readonly routes: readonly ScreenedRoute[] },
  condition: Condition | undefined,
): LimitFromStudy | null {
  const code = clause.setBy?.condition
  const age = clause.setBy?.age ?? clause.age
  const route = routes.find(({ property }) => property === clause.property)
  const own = code === undefined ? undefined : record.conditions?.[code]
  if (code === undefined || own === undefined || age === undefined || route === undefined) return null
  if (clause.deviation !== undefined || clause.statistic !== undefined) return null
  const asked = { batches: record.plan.batches ?? 1, level: STUDY_LEVEL }
  const limits = lowerLimits(clause).flatMap(([written, limit]) => {
    const found = limitAtCondition(route, { condition: code, age, limit }, asked)
    return found === null ? [] : [{ ...found, limit, written }]
  })
  return { condition: code, age, limits, differences: differences(clause, { own, age }, condition) }
}

/** Each once, in the order of the classes. */
function lowerLimits({ limits }: Comparison): [string, number][] {
  const quantities = limits
    .filter(({ operator }) => operator === 'at-least' || operator === 'above')
    .flatMap(({ byClass }) => Object.values(byClass).flat())
  return [...new Map(quantities.map(({ written, value }) => [written, value]))]
}

type StudyCondition = NonNullable<Study['conditions']>[string]

function differences(
  clause: Comparison,
  { own, age }: { readonly own: StudyCondition; readonly age: Age },
  condition: Condition | undefined,
): ConditionDifference[] {
  const named = clause.condition ?? ''
  const sides: (readonly [ConditionDifference['what'], Stated, Stated])[] = [
    ['condition', text(named), text(own.record)],
    ['replacement', condition?.replacement?.amount, own.replacement],
    ['curing temperature', condition?.curing?.temperature, own.temperature],
    ['w/cm', number(condition?.water?.['w/cm']), number(own['w/cm'])],
    [
      'quantity held constant',
      text(condition && heldConstant(condition)),
      text(own.flow?.replace('constant-', '')),
    ],
    ['curing', text(condition?.curing?.medium), text(own.curing)],
    ['age', clause.age && { value: clause.age.hours, written: clause.age.text }, hours(age)],
  ]
  return sides.flatMap(([what, here, there]) =>
    here === undefined || there === undefined || here.value === there.value
      ? []
      : [{ what, clause: here.written, study: there.written }],
  )
}

/** What the condition keeps from batch to batch: flow or w/cm. */
function heldConstant({ water }: Condition): string | undefined {
  if (water?.['flow-within'] !== undefined) return 'flow'
  return water?.['w/cm'] === undefined ? undefined : 'w/cm'
}

/** A thing as written, with what it is compared by; undefined where it is not stated. */
type Stated = { readonly value: string | number; readonly written: string } | undefined

const text = (word: string | undefined): Stated =>
  word === undefined ? undefined : { value: word, written: word }
const number = (value: number | undefined): Stated =>
  value === undefined ? undefined : { value, written: `${value}` }
const hours = (age: Age): Stated => ({ value: age.hours, written: age.text })
