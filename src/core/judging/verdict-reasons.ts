/** How far a set is met, which clauses decided, and what else is open. */
import { isNeutral } from '../criteria/combining.ts'
import type { Criterion } from '../criteria/criterion.ts'
import { lateRoutes } from '../criteria/late-routes.ts'
import type { Outcome } from '../criteria/outcome.ts'
import type { ClauseOutcome } from '../criteria/verdict.ts'
import type { VerdictReason } from '../criteria/reason.ts'

/**
 * How far a set is met, which clauses decided, and what else is open.
 * @param outcome of the whole set
 * @param clauses as judged under it, those that decide marked so
 */
export function verdictReasons(
  outcome: Outcome,
  clauses: readonly ClauseOutcome[],
  { edition, supersededBy, laterName }: Pick<Criterion, 'edition' | 'supersededBy' | 'laterName'>,
): VerdictReason[] {
  const combined = clauses.filter((clause) => !clause.information)
  return [
    ...openingReasons(outcome, combined),
    ...routesUsed(outcome, combined),
    ...(supersededBy === undefined
      ? []
      : [{ code: 'edition-superseded' as const, params: { edition, by: laterName ?? supersededBy } }]),
  ]
}

function openingReasons(outcome: Outcome, clauses: readonly ClauseOutcome[]): VerdictReason[] {
  const judged = clauses.filter((clause) => !isNeutral(clause.outcome))
  if (judged.length === 0) return [{ code: 'no-clause-applies', params: {} }]
  const met = judged.filter(isMet)
  if (met.length === judged.length) return allMet(outcome, judged)
  if (outcome === 'insufficient-history')
    return [
      { code: 'history-lacking', params: { uniformityAlone: onlyUniformityLacks(judged) } },
      ...decided(judged, outcome),
    ]
  const rest = judged.filter((clause) => clause.outcome !== outcome)
  return [summaryOf(outcome, judged), ...decided(judged, outcome), ...openByRoute(judged), ...alsoOpen(rest)]
}

/** Clauses that read as closed beside the verdict, but that an overdue result can still meet. */
function openByRoute(judged: readonly ClauseOutcome[]): VerdictReason[] {
  return judged.flatMap((clause): VerdictReason[] => {
    const late = clause.reasons.find(({ code }) => code === 'late-routes')
    return late?.code === 'late-routes'
      ? [{ code: 'late-routes-of', params: { clause: clause.id, ...late.params } }]
      : []
  })
}

/** How many clauses are met and how many are not: a count of those met alone would read as praise. */
function summaryOf(outcome: Outcome, judged: readonly ClauseOutcome[]): VerdictReason {
  const met = judged.filter(isMet).length
  const own = judged.filter((clause) => clause.outcome === outcome)
  const count = own.length
  if (met + count === judged.length) {
    const late =
      outcome === 'does-not-meet' ? own.filter((clause) => 0 < lateRoutes(clause).length).length : 0
    return {
      code: 'others-met',
      params: { outcome, count, others: met, ...(late === 0 ? {} : { soFar: late }) },
    }
  }
  const failed = judged.filter((clause) => clause.outcome === 'does-not-meet').length
  return { code: 'met-so-far', params: { met, failed, of: judged.length } }
}

function isMet({ outcome }: ClauseOutcome): boolean {
  return outcome === 'meets' || outcome === 'meets-by-approval'
}

function allMet(outcome: Outcome, judged: readonly ClauseOutcome[]): VerdictReason[] {
  const params = { count: judged.length }
  return outcome === 'meets'
    ? [{ code: 'all-met', params }]
    : [{ code: 'all-met-some-by-approval', params }, ...decided(judged, outcome)]
}

function onlyUniformityLacks(judged: readonly ClauseOutcome[]): boolean {
  return judged
    .filter((clause) => clause.outcome === 'insufficient-history')
    .every((clause) => clause.kind === 'deviation')
}

/** Clauses that the decision rule leaves open for one and the same reason are told together. */
function decided(clauses: readonly ClauseOutcome[], outcome: Outcome): VerdictReason[] {
  const own = decidedEach(clauses, outcome)
  const alike = own.filter(({ reasons: [reason] }) => reason.code === 'no-uncertainty')
  const single = (clause: ClauseOutcome): VerdictReason => ({
    code: 'decided-by',
    params: { clause: clause.id },
  })
  if (alike.length < 2) return own.map(single)
  return [
    ...own.filter((clause) => !alike.includes(clause)).map(single),
    { code: 'without-uncertainty', params: { clauses: alike.map(({ id }) => id) } },
  ]
}

/** Clauses with the outcome; of a group its members with it, where it has such. */
function decidedEach(clauses: readonly ClauseOutcome[], outcome: Outcome): ClauseOutcome[] {
  return clauses
    .filter((clause) => clause.outcome === outcome)
    .flatMap((clause) => {
      const members = decidedEach(clause.clauses ?? [], outcome)
      return members.length === 0 ? [clause] : members
    })
}

/** What else keeps the verdict from being met. */
function alsoOpen(rest: readonly ClauseOutcome[]): VerdictReason[] {
  const open = rest.filter((clause) => !isMet(clause))
  return [...Map.groupBy(open, ({ outcome }) => outcome)].map(([outcome, clauses]) => ({
    code: 'also-open',
    params: { outcome, clauses: clauses.map(({ id }) => id) },
  }))
}

/** Where one of several routes was enough, which one was used. */
function routesUsed(outcome: Outcome, clauses: readonly ClauseOutcome[]): VerdictReason[] {
  if (outcome !== 'meets') return []
  return clauses
    .filter((clause) => clause.decides && clause.combine === 'any-of')
    .map(({ id }) => ({ code: 'decided-by', params: { clause: id } }))
}
