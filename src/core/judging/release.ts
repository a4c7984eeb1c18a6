/** Whether a lot may ship on early results while its verdict is still pending, and what it waits for. */
import { isSameAge } from '../measure/age.ts'
import { type Clause, type Comparison, type Criterion, everyClause } from '../criteria/criterion.ts'
import type { ClauseOutcome } from '../criteria/verdict.ts'
import type { Release } from '../criteria/reason.ts'
import { defined } from '../measure/defined.ts'
import { judgeClause } from './group.ts'
import type { Judging } from './judging.ts'

/**
 * Every pending clause with its due date; undefined when the release list is empty or not met.
 * @param clauses as judged under the set
 */
export function releaseOf(judging: Judging, clauses: readonly ClauseOutcome[]): Release | undefined {
  const { release } = judging.criterion
  if (release.length === 0 || !release.every((entry) => isMet(entry, judging))) return undefined
  const pending = clauses.filter((clause) => clause.outcome === 'pending' && !clause.information)
  return { awaits: pending.map(({ id, due }) => defined({ clause: id, due })) }
}

function isMet(entry: Criterion['release'][number], judging: Judging): boolean {
  const clause = [...everyClause(judging.criterion.clauses)].find(
    (candidate) => candidate.id === entry.clause,
  )
  if (clause === undefined) return false
  const demands =
    entry.age === undefined && entry.limits.length === 0 ? [clause] : lesserDemands(clause, entry)
  return demands.some((demand) =>
    ['meets', 'meets-by-approval'].includes(judgeClause(demand, judging).outcome),
  )
}

/**
 * The clause's comparisons at the entry's age, held to its limits; without one at that age the first is asked
 * at that age.
 */
function lesserDemands(clause: Clause, entry: Criterion['release'][number]): Comparison[] {
  const comparisons = [...everyClause([clause])].filter((candidate) => candidate.form === 'comparison')
  const atAge =
    entry.age === undefined
      ? comparisons
      : comparisons.filter((comparison) => isSameAge(comparison.age, entry.age))
  const chosen = atAge.length === 0 ? comparisons.slice(0, 1) : atAge
  return chosen.map((comparison) => ({
    ...comparison,
    ...(entry.age === undefined ? {} : { age: entry.age }),
    ...(entry.limits.length === 0 ? {} : { limits: entry.limits }),
  }))
}
