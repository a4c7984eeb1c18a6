/** A clause that is not met and that a result on record as planned, whose day is past, can still meet. */
import { isNeutral } from './combining.ts'
import type { LateRoute } from './reason.ts'
import type { ClauseOutcome } from './verdict.ts'

type Judged = Pick<ClauseOutcome, 'id' | 'outcome' | 'information' | 'combine' | 'reasons' | 'clauses'>

/**
 * Overdue results through which a clause that is not met can still be met.
 * @param clause as judged, its members with it
 * @returns none where the clause is met, or stays as it is whatever those results are
 */
export function lateRoutes(clause: Judged): LateRoute[] {
  return !isMet(clause) && isOpen(clause) ? overdueIn(clause) : []
}

/**
 * Whether a set is not met for nothing but clauses that an overdue result can still meet.
 * @param clauses of the set, as judged
 */
export function failsSoFar(clauses: readonly Judged[]): boolean {
  const failing = combined(clauses).filter(({ outcome }) => outcome === 'does-not-meet')
  return 0 < failing.length && failing.every((clause) => 0 < lateRoutes(clause).length)
}

function overdueIn({ id, reasons: [reason], clauses }: Judged): LateRoute[] {
  if (reason.code === 'result-overdue') return [{ clause: id, since: reason.params.since }]
  return combined(clauses ?? []).flatMap(lateRoutes)
}

/** Met, or not closed: what is awaited, in time or late, may come out either way. */
function isOpen({ outcome, combine, reasons: [reason], clauses = [] }: Judged): boolean {
  if (outcome === 'pending' || reason.code === 'result-overdue') return true
  const members = combined(clauses)
  if (combine === 'any-of') return members.some(isOpen)
  return combine === 'all-of' && members.every((member) => isMet(member) || isOpen(member))
}

function isMet({ outcome }: Judged): boolean {
  return outcome === 'meets' || outcome === 'meets-by-approval'
}

function combined(clauses: readonly Judged[]): Judged[] {
  return clauses.filter(({ information, outcome }) => !information && !isNeutral(outcome))
}
