/** The parts of a clause outcome that every kind of clause shares. */
import { clauseTitle } from '../../words/clause-title.ts'
import type { Clause } from '../criteria/criterion.ts'
import type { Evidence } from '../evidence/evidence.ts'
import type { ClauseOutcome, Outcome } from '../criteria/outcome.ts'

/** An outcome with its reason and whatever is known beyond them. */
export type Finding = Pick<ClauseOutcome, 'outcome' | 'reason'> & Partial<ClauseOutcome>

/** @param finding overrides the empty value, limit and result of a clause that was not compared */
export function clauseOutcome(clause: Clause, evidence: Evidence, finding: Finding): ClauseOutcome {
  const conditionTitle = (id: string): string => evidence.conditionTitle?.(id) ?? id
  return {
    id: clause.id,
    title: clauseTitle(clause, conditionTitle),
    decides: false,
    information: clause.information,
    ...about(clause),
    ...relaxed(clause),
    value: null,
    compared: null,
    unit: null,
    decimals: null,
    limit: null,
    result: null,
    ...finding,
  }
}

function about(clause: Clause): Pick<ClauseOutcome, 'kind' | 'property' | 'condition' | 'age' | 'combine'> {
  if (clause.form === 'group') return { kind: 'group', combine: clause.combine }
  if (clause.form !== 'comparison') return { kind: clause.form }
  return {
    kind:
      clause.bands !== undefined
        ? 'bands'
        : clause.statistic !== undefined && clause.statistic.of !== 'declared'
          ? 'statistic'
          : clause.deviation === undefined
            ? 'value'
            : 'deviation',
    property: clause.property,
    ...(clause.condition === undefined ? {} : { condition: clause.condition }),
    ...(clause.age === undefined ? {} : { age: clause.age }),
  }
}

function relaxed({ changes }: Clause): Pick<ClauseOutcome, 'relaxed'> {
  const change = changes?.findLast((candidate) => candidate.change === 'relax')
  return change === undefined ? {} : { relaxed: { by: change.layer, was: change.was } }
}

/** Outcome and reason alone, for a clause that is not judged. */
export function plainly(outcome: Outcome, reason: string): Finding {
  return { outcome, reason }
}
