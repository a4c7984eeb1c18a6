/** Limits of a shipped set as one line a clause, to be held against the reference file's numbers. */
import {
  type Clause,
  type Criterion,
  EVERY_CLASS,
  everyClause,
  type Limit,
} from '../../../src/core/criteria/criterion.ts'
import type { Evidence } from '../../../src/core/evidence/evidence.ts'
import { judge } from '../../../src/core/judging/verdict.ts'
import type { Result } from '../../../src/core/result/result.ts'
import type { Outcome } from '../../../src/core/criteria/outcome.ts'
import { clauseOf, evidenceOf } from '../../core/judging/fixture.ts'

/** "at-most A 5.0 %, B 7.0 %" by clause id; clauses on values only, without groups and bands. */
export function limitsOf(set: Criterion): Record<string, string> {
  return Object.fromEntries(
    [...everyClause(set.clauses)].flatMap((clause) =>
      clause.form === 'comparison' && clause.bands === undefined
        ? [[clause.id, clause.limits.map(words).join(' and ')]]
        : [],
    ),
  )
}

function words({ operator, byClass }: Limit): string {
  const byName = Object.entries(byClass).map(
    ([name, quantities]) =>
      `${name === EVERY_CLASS ? '' : `${name} `}${quantities.map(({ written }) => written).join(' to ')}`,
  )
  return [operator, byName.join(', ')].filter((part) => part !== '').join(' ')
}

/** Ids of the clauses whose limits were read, those of group members included. */
export function readClauses(set: Criterion): string[] {
  return [...everyClause(set.clauses)]
    .filter((clause) => clause.form !== 'group' && clause.basis !== undefined && 'read' in clause.basis)
    .map(({ id }) => id)
}

export function clauseIn(set: Criterion, id: string): Clause {
  const found = [...everyClause(set.clauses)].find((clause) => clause.id === id)
  if (found === undefined) throw new Error(`no clause ${id} in ${set.id}`)
  return found
}

export function outcomeOf(
  set: Criterion,
  id: string,
  results: readonly Result[],
  more: Partial<Evidence> = {},
): Outcome {
  return clauseOf(judge(set, evidenceOf(results, more)), id).outcome
}
