/** A value against every limit of its clause that holds for the lot's class, under the decision rule. */
import { severity } from '../criteria/combining.ts'
import type { Comparison } from '../criteria/criterion.ts'
import { type DoubtRule, rulesByDoubt } from '../criteria/decision-rule.ts'
import type { ClassLimit } from '../criteria/limits-for-class.ts'
import { isBounded } from '../result/bounds.ts'
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
import { effectiveEnds, unroundedEnds } from './effective-ends.ts'
import { type ClauseJudgement, judgement, withReason } from './judged-clause.ts'
import type { ComparisonCase } from './judging.ts'
import { storedUnitOf } from './limit-unit.ts'
import { shownBounds } from './reported-value.ts'
import { limitAsSpecified } from './limit-as-specified.ts'
import { limitUnderDecisionRule } from './limit-under-decision-rule.ts'

/** What a value is judged with beyond itself. */
export interface JudgedWith {
  /** Of the result judged, for the outcome; null where it is not one result's. */
  readonly key: string | null
  /** Undefined where the laboratory states none for the result. */
  readonly uncertainty?: Uncertainty
  /** What of that uncertainty one batch adds, and what the reference, where they are not the whole and nothing. */
  readonly parts?: UncertaintyParts
  /** A statistic over results is judged as specified whatever the rule: its doubt is part of it. */
  readonly asSpecified?: true
}

/** Parts of a standard uncertainty, in its unit. */
export interface UncertaintyParts {
  readonly ofBatch: number
  readonly ofReference: number
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
  const found = { ...decisive, value: judged.value, ...shownBounds(judged), result: judgedWith.key }
  return found.outcome === 'does-not-meet' ? withApproval(found, comparison, judged) : found
}

function judgeAgainstLimit(
  { clause, criterion }: ComparisonCase,
  limit: ClassLimit,
  judged: JudgedValue,
  judgedWith: JudgedWith,
): ClauseJudgement {
  const { uncertainty, asSpecified } = judgedWith
  const resolution = resolutionFor(clause, limit)
  const compared = compareWithLimit(judged, limit.operator, limit.quantities, resolution)
  const specified = limitAsSpecified({ clause, limit, judged, compared })
  const rule = clause.decisionRule ?? criterion.decisionRule
  const applied = asSpecified === true || !rulesByDoubt(rule) ? undefined : rule
  const shared = {
    compared: compared.compared,
    decimals: compared.decimals,
    limit: appliedLimit(limit, clause),
    unit: storedUnitOf(limit),
    ...doubtFor({ limit, judged, compared, resolution, rule: applied }, judgedWith),
  }
  if (applied !== undefined)
    return { ...shared, ...limitUnderDecisionRule(applied, { limit, judged, specified, uncertainty }) }
  const plain = { ...shared, ...judgement(specified.outcome, specified.reason) }
  return asSpecified === true || rule.rule === 'as-specified'
    ? plain
    : withReason(plain, { code: 'rule-not-agreed', params: { rule } })
}

interface Doubted {
  readonly limit: ClassLimit
  readonly judged: JudgedValue
  readonly compared: ComparedValue
  readonly resolution: Resolution | undefined
  /** The rule that decides by the uncertainty; undefined where the rounded value decides. */
  readonly rule: DoubtRule | undefined
}

/** For information: an index is nothing without its doubt, and no outcome as specified depends on it. */
function doubtFor(
  { limit, judged, compared, resolution, rule }: Doubted,
  { uncertainty, parts }: JudgedWith,
): Pick<ClauseJudgement, 'uncertainty' | 'doubt'> {
  if (uncertainty === undefined || isBounded(judged)) return {}
  const ends = rule === undefined ? effectiveEnds(limit, resolution) : unroundedEnds(limit)
  const scatter = { u: uncertainty.u, df: uncertainty.df, ...parts }
  const doubt = {
    ...doubtOfOutcome(judged.value, ends, scatter, rule),
    unit: storedUnitOf(limit),
    decimals: Math.max(1, compared.decimals),
  }
  return { uncertainty, doubt }
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
