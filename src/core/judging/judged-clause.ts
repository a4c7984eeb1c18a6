/** The parts of a clause outcome that every kind of clause shares. */
import type { Clause } from '../criteria/criterion.ts'
import type { Outcome } from '../criteria/outcome.ts'
import type { ClauseOutcome } from '../criteria/verdict.ts'
import type { AddedReason, ClauseReason } from '../criteria/reason.ts'
import { defined } from '../measure/defined.ts'

/** An outcome with its reasons and whatever is known beyond them. */
export type ClauseJudgement = Pick<ClauseOutcome, 'outcome' | 'reasons'> & Partial<ClauseOutcome>

/** An outcome for one reason, and nothing beyond it. */
export function judgement(outcome: Outcome, reason: ClauseReason): ClauseJudgement {
  return { outcome, reasons: [reason] }
}

/** A judgement with one more reason behind those it has. */
export function withReason(judged: ClauseJudgement, added: AddedReason): ClauseJudgement {
  const [first, ...others] = judged.reasons
  return { ...judged, reasons: [first, ...others, added] }
}

/**
 * The outcome of a clause, with what its kind of clause says of itself.
 * @param judged overrides the empty value, limit and result of a clause that was not compared
 */
export function clauseOutcome(clause: Clause, judged: ClauseJudgement): ClauseOutcome {
  return {
    id: clause.id,
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
    ...judged,
  }
}

function about(clause: Clause): Pick<ClauseOutcome, 'kind' | 'property' | 'condition' | 'age' | 'combine'> {
  if (clause.form === 'group') return { kind: 'group', combine: clause.combine }
  if (clause.form !== 'comparison') return { kind: clause.form }
  const { property, condition, age } = clause
  return defined({ kind: comparisonKind(clause), property, condition, age })
}

function comparisonKind({
  bands,
  statistic,
  deviation,
}: Extract<Clause, { form: 'comparison' }>): ClauseOutcome['kind'] {
  if (bands !== undefined) return 'bands'
  if (statistic !== undefined && statistic.of !== 'declared') return 'statistic'
  return deviation === undefined ? 'value' : 'deviation'
}

function relaxed({ changes }: Clause): Pick<ClauseOutcome, 'relaxed'> {
  const change = changes?.findLast((candidate) => candidate.change === 'relax')
  return change === undefined ? {} : { relaxed: { by: change.layer, former: change.former } }
}
