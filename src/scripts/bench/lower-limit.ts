/** The limit from below that a set puts on one property of a mortar. */
import { type Comparison, type Criterion, everyClause } from '../../core/criteria/criterion.ts'
import { type StatedLimit, limitsForClass, statedLimit } from '../../core/criteria/limits-for-class.ts'
import { effectiveEnds } from '../../core/judging/effective-ends.ts'
import { type Age, isSameAge } from '../../core/measure/age.ts'
import type { PropertyKey } from '../../core/measure/properties.ts'

interface Judged {
  readonly property: PropertyKey
  readonly condition: string
  readonly age: Age
  readonly lotClass: string | null
}

/** A limit as it is stated, and the value from which it is met before rounding. */
export type LowerLimit = StatedLimit & { readonly from: number }

/** Of the first clause that has one; undefined where the set asks nothing of it from below. */
export function lowerLimitOn(criterion: Criterion, judged: Judged): LowerLimit | undefined {
  for (const clause of everyClause(criterion.clauses)) {
    if (clause.form !== 'comparison' || !isOn(clause, judged)) continue
    const limit = limitsForClass(clause.limits, judged.lotClass).find(
      ({ operator }) => operator === 'at-least' || operator === 'above',
    )
    const from = limit && effectiveEnds(limit, clause.resolution).low?.at
    if (limit !== undefined && from !== undefined) return { ...statedLimit(limit), from }
  }
  return undefined
}

function isOn(clause: Comparison, { property, condition, age }: Judged): boolean {
  return (
    clause.property === property &&
    clause.condition === condition &&
    isSameAge(age, clause.age) &&
    clause.deviation === undefined
  )
}
