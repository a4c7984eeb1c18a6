/** A value against one limit under a guarded or probability rule that both parties have agreed on. */
import {
  type Admitted,
  type AgreedRule,
  admitted,
  chanceOfMeeting,
  factorOf,
  underDoubt,
} from '../criteria/decision-rule.ts'
import { type ClassLimit, statedLimit } from '../criteria/limits-for-class.ts'
import type { Outcome } from '../criteria/outcome.ts'
import { type BoundEnd, type Extent, extentOf, isBounded } from '../result/bounds.ts'
import type { Uncertainty } from '../result/uncertainty.ts'
import type { UnderRuleParams } from '../criteria/reason.ts'
import { defined } from '../measure/defined.ts'
import type { JudgedValue } from './compare-with-limit.ts'
import { type ClauseJudgement, judgement, withReason } from './judged-clause.ts'
import type { AsSpecified } from './limit-as-specified.ts'
import { storedUnitOf } from './limit-unit.ts'

interface UnderRule {
  readonly limit: ClassLimit
  readonly judged: JudgedValue
  /** The same value and limit as specified. */
  readonly specified: AsSpecified
  /** Undefined where the laboratory states none: the rule cannot decide. */
  readonly uncertainty: Uncertainty | undefined
}

/** The outcome under an agreed rule. Nothing is rounded: the value itself stands as the one compared. */
export function limitUnderDecisionRule(
  rule: AgreedRule,
  { limit, judged, specified, uncertainty }: UnderRule,
): ClauseJudgement {
  const compared = judged.value
  if (uncertainty === undefined)
    return {
      ...judgement('inconclusive', {
        code: 'no-uncertainty',
        params: { rule, asSpecified: specified.reason },
      }),
      compared,
    }
  const admits = admittedBy(limit)
  if (isBounded(judged)) {
    const outcome = outcomeOfBounded(extentOf(judged), admits, (at) =>
      underDoubt(rule, at, admits, uncertainty),
    )
    const atBounds = judgement(outcome, specified.reason)
    return { ...withReason(atBounds, { code: 'rule-applied', params: { rule } }), compared, uncertainty }
  }
  const outcome = underDoubt(rule, judged.value, admits, uncertainty)
  const reason = {
    code: 'under-rule' as const,
    params: {
      value: judged.value,
      u: uncertainty.u,
      unit: storedUnitOf(limit),
      outcome,
      limit: statedLimit(limit),
      rule,
      ...appliedFigures(rule, judged.value, admits, uncertainty),
    },
  }
  return { ...judgement(outcome, reason), compared, uncertainty }
}

/** The figures that decided: the guard and its factor, or the probability reached. */
function appliedFigures(
  rule: AgreedRule,
  value: number,
  admits: Admitted,
  uncertainty: Uncertainty,
): Pick<UnderRuleParams, 'df' | 'factor' | 'guard' | 'probability'> {
  const { u, df } = uncertainty
  if (rule.rule === 'probability')
    return defined({ df, probability: chanceOfMeeting(value, admits, uncertainty) })
  const factor = factorOf(rule, df)
  return defined({ df, factor, guard: factor * u })
}

/** The values that a limit admits, in the stored unit. */
export function admittedBy({ operator, quantities }: ClassLimit): Admitted {
  return admitted(
    operator,
    quantities.map((quantity) => quantity.value),
  )
}

/**
 * What both ends of what a value may be decide alike; two that fail on either side of the limit leave open whether
 * the value itself does.
 */
function outcomeOfBounded(
  { low, high }: Extent,
  admits: Admitted,
  outcomeAt: (value: number) => Outcome,
): Outcome {
  const endOutcome = ({ at }: BoundEnd): Outcome => {
    if (Number.isFinite(at)) return outcomeAt(at)
    return at === admits.low || at === admits.high ? 'meets' : 'does-not-meet'
  }
  const [least, most] = [endOutcome(low), endOutcome(high)]
  if (least === 'meets' && most === 'meets') return 'meets'
  const isOneSide = high.at <= admits.low || admits.high <= low.at
  return least === 'does-not-meet' && most === 'does-not-meet' && isOneSide ? 'does-not-meet' : 'inconclusive'
}
