/** A value against every limit of its clause that holds for the lot's class, under the decision rule. */
import { severity } from '../criteria/combining.ts'
import type { Comparison } from '../criteria/criterion.ts'
import { rulesByDoubt } from '../criteria/decision-rule.ts'
import type { ClassLimit } from '../criteria/limits-for-class.ts'
import type { Uncertainty } from '../result/uncertainty.ts'
import { withApproval } from './approval.ts'
import { appliedLimit } from './applied-limit.ts'
import {
  type ComparedValue,
  compareWithLimit,
  type JudgedValue,
  type Resolution,
} from './compare-with-limit.ts'
import { UNIFORMITY_RESOLUTION } from './deviation.ts'
import { doubtOfOutcome } from './doubt-of-outcome.ts'
import { type ClauseJudgement, judgement, withReason } from './judged-clause.ts'
import type { ComparisonCase } from './judging.ts'
import { storedUnitOf } from './limit-unit.ts'
import { limitAsSpecified } from './limit-as-specified.ts'
import { admittedBy, limitUnderDecisionRule } from './limit-under-decision-rule.ts'

/** What a value is judged with beyond itself. */
export interface JudgedWith {
  /** Of the result judged, for the outcome; null where it is not one result's. */
  readonly key: string | null
  /** Undefined where the laboratory states none for the result. */
  readonly uncertainty?: Uncertainty
  /** A statistic over results is judged as specified whatever the rule: its doubt is part of it. */
  readonly asSpecified?: true
}

/**
 * The value against every limit of the clause; the worst outcome is the one shown.
 * @throws RangeError when the clause has no limit for the class
 */
export function judgeAgainstLimits(
  comparison: ComparisonCase,
  judged: JudgedValue,
  judgedWith: JudgedWith,
): ClauseJudgement {
  const [first, ...others] = comparison.limits.map((limit) =>
    judgeAgainstLimit(comparison, limit, judged, judgedWith),
  )
  if (first === undefined)
    throw new RangeError(
      `judgeAgainstLimits needs a limit to compare with, got none in clause ${comparison.clause.id}`,
    )
  const decisive = others.reduce(
    (worst, candidate) => (severity(candidate.outcome) < severity(worst.outcome) ? candidate : worst),
    first,
  )
  const found = { ...decisive, value: judged.value, result: judgedWith.key }
  return found.outcome === 'does-not-meet' ? withApproval(found, comparison, judged) : found
}

function judgeAgainstLimit(
  { clause, criterion }: ComparisonCase,
  limit: ClassLimit,
  judged: JudgedValue,
  { uncertainty, asSpecified }: JudgedWith,
): ClauseJudgement {
  const compared = compareWithLimit(judged, limit.operator, limit.quantities, resolutionFor(clause, limit))
  const specified = limitAsSpecified({ clause, limit, judged, compared })
  const shared = {
    compared: compared.compared,
    decimals: compared.decimals,
    limit: appliedLimit(limit, clause),
    unit: storedUnitOf(limit),
    ...doubtFor(limit, judged, compared, uncertainty),
  }
  const plain = { ...shared, ...judgement(specified.outcome, specified.reason) }
  const rule = clause.decisionRule ?? criterion.decisionRule
  if (asSpecified === true || rule.rule === 'as-specified') return plain
  if (!rulesByDoubt(rule)) return withReason(plain, { code: 'rule-not-agreed', params: { rule } })
  return { ...shared, ...limitUnderDecisionRule(rule, { limit, judged, specified, uncertainty }) }
}

/** For information: an index is nothing without its doubt, and no outcome as specified depends on it. */
function doubtFor(
  limit: ClassLimit,
  judged: JudgedValue,
  { decimals }: ComparedValue,
  uncertainty: Uncertainty | undefined,
): Pick<ClauseJudgement, 'uncertainty' | 'doubt'> {
  if (uncertainty === undefined || judged.censored !== undefined) return {}
  const measure = { u: uncertainty.u, unit: storedUnitOf(limit), decimals: Math.max(1, decimals) }
  return { uncertainty, doubt: doubtOfOutcome(judged.value, admittedBy(limit), measure) }
}

/**
 * Uniformity in per cent or points is compared in steps of 0.1 unless the clause says otherwise; an estimate
 * over a period unrounded.
 */
function resolutionFor(clause: Comparison, limit: ClassLimit): Resolution | undefined {
  if (clause.resolution !== undefined) return clause.resolution
  if (clause.statistic?.of === 'variables') return 'none'
  const kind = limit.quantities[0]?.kind
  return clause.deviation?.from === 'preceding' && (kind === 'fraction' || kind === 'points')
    ? UNIFORMITY_RESOLUTION
    : undefined
}
