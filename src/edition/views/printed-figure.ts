/** A clause's value as it stands beside its limit, and the name that says what was measured. */
import type { AppliedLimit, ClauseOutcome } from '../../core/criteria/verdict.ts'
import { property } from '../../core/measure/properties.ts'
import { boundsWords } from '../../words/bounds.ts'
import { comparedFigure } from '../../words/compared-values.ts'
import { besideLimit } from '../../words/limit-units.ts'
import { hasOther, type UnitSystem } from '../../words/unit-systems.ts'
import { quantity } from '../../words/units.ts'
import type { Edition } from '../shape/edition.ts'

/** A clause that holds a value against a limit. */
export type ComparedClause = ClauseOutcome &
  Required<Pick<ClauseOutcome, 'property'>> & { value: number; limit: AppliedLimit }

/** Whether a clause holds a value against a limit. */
export function isCompared(clause: ClauseOutcome): clause is ComparedClause {
  return (
    clause.property !== undefined &&
    clause.value !== null &&
    clause.limit !== null &&
    clause.limit.operator !== 'report'
  )
}

/** Beside its limit a value reads as it was compared. */
export function printedFigure(clause: ComparedClause, units: UnitSystem): string {
  const { bounds, unit } = clause
  if (bounds !== undefined) return boundsWords(bounds, property(clause.property).decimals, unit ?? '', units)
  const { value, decimals } = comparedFigure(clause, property(clause.property).decimals)
  const stored = { value, decimals, unit: unit ?? '' }
  if (hasOther(stored.unit, units))
    return `${quantity(value, decimals, stored.unit)} (${quantity(value, decimals, stored.unit, units)})`
  const own = besideLimit(stored, clause.limit)
  return quantity(own.value, own.decimals, own.unit)
}

/** "Strength activity index, modified (50 %, 50 °C, w/cm 0.485), 28 d". */
export function comparedTitle({ conditions }: Pick<Edition, 'conditions'>, clause: ComparedClause): string {
  const condition = clause.condition === undefined ? undefined : conditions.get(clause.condition)
  const named =
    condition === undefined || condition.standing === 'standard'
      ? condition?.title
      : `modified (${condition.title})`
  return [property(clause.property).title, named, clause.age].filter((part) => part !== undefined).join(', ')
}
