/** data/criteria.json: every set as it is judged by, with what its layers changed. */
import type { Clause, Criterion } from '../../core/criteria/criterion.ts'
import { demandWords } from '../../words/clause-demands.ts'
import type { Edition } from '../shape/edition.ts'

export function criterionData(edition: Pick<Edition, 'criteria'>): object {
  return { format: 1, criteria: setsData(edition.criteria) }
}

/** Sets by id. */
export function setsData(criteria: Edition['criteria']): object {
  return Object.fromEntries([...criteria].map(([id, criterion]) => [id, setData(criterion)]))
}

/** The former demand stands in words too, as `was`. */
function setData(criterion: Criterion): Record<string, unknown> {
  return {
    ...criterion,
    clauses: criterion.clauses.map(clauseData),
    removed: criterion.removed.map(formerInWords),
  }
}

function clauseData(clause: Clause): Record<string, unknown> {
  return {
    ...clause,
    ...(clause.changes === undefined ? {} : { changes: clause.changes.map(formerInWords) }),
    ...(clause.form === 'group' ? { members: clause.members.map(clauseData) } : {}),
  }
}

function formerInWords<T extends { readonly former: Clause }>({ former, ...change }: T): unknown {
  return { ...change, was: demandWords(former), former }
}
