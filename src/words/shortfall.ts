/** By how much a clause is not met, in a line: "Loss on ignition 6.6 % against ≤ 6.0 %, beyond it by 0.6 points". */
import { marginToLimit } from '../core/criteria/margin-to-limit.ts'
import type { Criterion } from '../core/criteria/criterion.ts'
import { type ClauseOutcome, everyClauseOutcome, type Verdict } from '../core/criteria/verdict.ts'
import { limitText } from './limits.ts'
import { numberWords } from './numbers.ts'
import { type ConditionTitle, titlesOf } from './worded-verdict.ts'

/**
 * The clauses that decided a verdict, each with its value, its limit and the distance between them where it has
 * them.
 */
export function shortfallWords(
  { decidedBy, clauses }: Pick<Verdict, 'decidedBy' | 'clauses'>,
  criterion: Criterion,
  conditionTitle: ConditionTitle,
): string {
  const titleOf = titlesOf(criterion, conditionTitle)
  const outcomes = new Map([...everyClauseOutcome(clauses)].map((clause) => [clause.id, clause]))
  return decidedBy
    .map((id) => {
      const clause = outcomes.get(id)
      const by = clause === undefined ? null : distanceWords(clause)
      return by === null ? titleOf(id) : `${titleOf(id)}: ${by}`
    })
    .join('; ')
}

function distanceWords(clause: ClauseOutcome): string | null {
  const margin = marginToLimit(clause)
  const { compared, limit, unit, decimals } = clause
  if (margin === null || 0 < margin || compared === null || limit === null) return null
  const places = decimals ?? 1
  const value = numberWords(compared, places, unit ?? '')
  const distance = numberWords(-margin, places, unit === '%' ? 'points' : (unit ?? ''))
  return `${value} against ${limitText(limit)}, beyond it by ${distance}`
}
