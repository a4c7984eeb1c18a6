/** A set that has no class for a lot. */
import type { ClauseReason } from './reason.ts'
import { everyClauseOutcome, type Verdict } from './verdict.ts'

const NO_CLASS: readonly ClauseReason['code'][] = ['class-of-another-set', 'class-none-fits']

/**
 * Whether a clause is open for want of a class.
 * @param code of its reason; undefined where none is told
 */
export function lacksClass(code: string | undefined): boolean {
  return NO_CLASS.some((one) => one === code)
}

/**
 * Whether all that a verdict lacks is a class of its set that the lot belongs to: no result is missing then.
 * @returns false for a lot that claims no class at all, since it may claim one
 */
export function hasNoClass({
  outcome,
  decidedBy,
  clauses,
}: Pick<Verdict, 'outcome' | 'decidedBy' | 'clauses'>): boolean {
  if (outcome !== 'not-reported' || decidedBy.length === 0) return false
  const reasons = new Map(
    [...everyClauseOutcome(clauses)].map((clause) => [clause.id, clause.reasons[0].code]),
  )
  return decidedBy.every((id) => lacksClass(reasons.get(id)))
}
