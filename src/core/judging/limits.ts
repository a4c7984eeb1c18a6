/** A value against every limit of its clause that holds for the lot's class, under the decision rule. */
import type { Uncertainty } from '../result/uncertainty.ts'
import { withApproval } from './approval.ts'
import {
  type Answer,
  type ComparedValue,
  compareWithLimit,
  type JudgedValue,
  type Resolution,
} from './compare-with-limit.ts'
import type { Comparison, DecisionRule, Limit, Operator } from '../criteria/criterion.ts'
import {
  admitted,
  type DoubtRule,
  type Interval,
  ruleName,
  rulesByDoubt,
  underDoubt,
} from '../criteria/decision-rule.ts'
import { doubtWords } from './doubt-of-verdict.ts'
import { UNIFORMITY_RESOLUTION } from './deviation.ts'
import type { Finding } from './judged-clause.ts'
import type { Judging } from './judging.ts'
import { limitWords, numberWords, quantitiesFor, unroundedWords } from '../../words/limit-words.ts'
import { severity } from '../criteria/combining.ts'
import { property } from '../measure/properties.ts'
import { KINDS, type Quantity } from '../measure/units.ts'
import type { AppliedLimit, Outcome } from '../criteria/outcome.ts'

/** A limit that holds for the lot's class. */
export interface HeldLimit {
  readonly operator: Exclude<Operator, 'report'>
  readonly quantities: readonly Quantity[]
}

/** A comparison with what it is judged by. */
export interface Bench extends Judging {
  readonly clause: Comparison
  readonly limits: readonly HeldLimit[]
}

export function heldLimits(limits: readonly Limit[], lotClass: string | null): HeldLimit[] {
  return limits.flatMap(({ operator, ...limit }) => {
    const quantities = operator === 'report' ? undefined : quantitiesFor({ operator, ...limit }, lotClass)
    return quantities === undefined || operator === 'report' ? [] : [{ operator, quantities }]
  })
}

/** What a value is judged with beyond itself. */
export interface Doubt {
  /** Undefined where the laboratory states none for the result. */
  readonly uncertainty?: Uncertainty
  /** A statistic over results is judged as specified whatever the rule: its doubt is part of it. */
  readonly asSpecified?: boolean
}

/**
 * The value against every limit of the clause; the worst answer is the one shown.
 * @param key of the result judged, for the outcome
 * @throws RangeError when the clause has no limit for the class
 */
export function held(bench: Bench, judged: JudgedValue, key: string | null, doubt: Doubt = {}): Finding {
  const findings = bench.limits.map((limit) => heldOne(bench, limit, judged, doubt))
  const [first] = findings
  if (first === undefined)
    throw new RangeError(`held needs a limit to compare with, got none in clause ${bench.clause.id}`)
  const decisive = findings.reduce(
    (worst, finding) => (severity(finding.outcome) < severity(worst.outcome) ? finding : worst),
    first,
  )
  const found = { ...decisive, value: judged.value, result: key }
  return found.outcome === 'does-not-meet' ? withApproval(found, bench, judged) : found
}

function heldOne(
  bench: Bench,
  limit: HeldLimit,
  judged: JudgedValue,
  { uncertainty, asSpecified }: Doubt,
): Finding {
  const { clause, criterion } = bench
  const compared = compareWithLimit(judged, limit.operator, limit.quantities, resolutionFor(clause, limit))
  const plain = { outcome: outcomeOf(compared.answer), reason: sentence(judged, limit, compared, clause) }
  const shared = {
    compared: compared.compared,
    decimals: compared.decimals,
    limit: appliedLimit(limit, clause),
    ...unitOf(limit, clause),
    ...doubtOf(limit, judged, compared, uncertainty),
  }
  const rule = clause.decisionRule ?? criterion.decisionRule
  if (asSpecified === true || rule.rule === 'as-specified') return { ...shared, ...plain }
  if (!rulesByDoubt(rule))
    return {
      ...shared,
      ...plain,
      reason: `${plain.reason}; the ${namedRule(rule)} is not agreed in writing, so judged as specified`,
    }
  return { ...shared, ...doubted(rule, { limit, judged, plain, uncertainty }) }
}

/** For information: an index is nothing without its doubt, and no outcome as specified depends on it. */
function doubtOf(
  limit: HeldLimit,
  judged: JudgedValue,
  { decimals }: ComparedValue,
  uncertainty: Uncertainty | undefined,
): Pick<Finding, 'uncertainty' | 'doubt'> {
  if (uncertainty === undefined || judged.censored !== undefined) return {}
  const unit = KINDS[limit.quantities[0]?.kind ?? 'ratio'].stored
  return {
    uncertainty,
    doubt: doubtWords(judged.value, admittedBy(limit), uncertainty, {
      unit,
      decimals: Math.max(1, decimals),
    }),
  }
}

function namedRule(rule: DecisionRule): string {
  return rule.rule === 'as-specified' ? 'rule' : ruleName(rule)
}

/** The values that a limit admits. */
function admittedBy({ operator, quantities }: HeldLimit): Interval {
  return admitted(
    operator,
    quantities.map((quantity) => quantity.value),
  )
}

interface Doubted {
  readonly limit: HeldLimit
  readonly judged: JudgedValue
  readonly plain: { readonly outcome: Outcome; readonly reason: string }
  readonly uncertainty: Uncertainty | undefined
}

/** Nothing is rounded: the value itself stands as the one compared. */
function doubted(rule: DoubtRule, { limit, judged, plain, uncertainty }: Doubted): Finding {
  const named = `${ruleName(rule)} agreed in ${rule.agreedIn}`
  if (uncertainty === undefined)
    return {
      outcome: 'inconclusive',
      compared: judged.value,
      reason: `no uncertainty stated, which the ${named} needs; as specified, ${plain.reason}`,
    }
  const interval = admittedBy(limit)
  const outcome = underDoubt(rule, judged.value, interval, uncertainty)
  if (judged.censored !== undefined)
    return {
      outcome: censoredOutcome(outcome, interval),
      compared: judged.value,
      uncertainty,
      reason: `${plain.reason}, under the ${named}`,
    }
  const unit = KINDS[limit.quantities[0]?.kind ?? 'ratio'].stored
  const words =
    { meets: 'meets', 'does-not-meet': 'does not meet' }[outcome as 'meets' | 'does-not-meet'] ??
    'neither meets nor misses'
  return {
    outcome,
    compared: judged.value,
    uncertainty,
    reason: `${unroundedWords(judged.value, 1, unit)} with a standard uncertainty of ${unroundedWords(uncertainty.u, 0, unit)} ${words} the limit, ${limitWords(limit.operator, limit.quantities)}, under the ${named}`,
  }
}

/**
 * The true value lies below the bound stated: what the bound itself decides stands only on the side that a
 * lower value does not leave.
 */
function censoredOutcome(atBound: Outcome, { low }: { readonly low: number }): Outcome {
  const stands = low === Number.NEGATIVE_INFINITY ? 'meets' : 'does-not-meet'
  return atBound === stands ? stands : 'inconclusive'
}

/**
 * Uniformity in per cent or points is compared in steps of 0.1 unless the clause says otherwise; an estimate
 * over a period unrounded.
 */
function resolutionFor(clause: Comparison, limit: HeldLimit): Resolution | undefined {
  if (clause.resolution !== undefined) return clause.resolution
  if (clause.statistic?.of === 'variables') return 'none'
  const kind = limit.quantities[0]?.kind
  return clause.deviation?.from === 'preceding' && (kind === 'fraction' || kind === 'points')
    ? UNIFORMITY_RESOLUTION
    : undefined
}

function outcomeOf(answer: Answer): 'meets' | 'does-not-meet' | 'not-reported' {
  return answer === 'met' ? 'meets' : answer === 'not-met' ? 'does-not-meet' : 'not-reported'
}

function sentence(
  judged: JudgedValue,
  limit: HeldLimit,
  compared: ComparedValue,
  clause: Comparison,
): string {
  const unit = limit.quantities[0]?.unit ?? ''
  const words = limitWords(limit.operator, limit.quantities)
  const shown = numberWords(compared.shown, compared.shownDecimals, unit)
  if (judged.censored !== undefined) return censoredSentence(shown, words, compared.answer)
  const before =
    compared.decimals === compared.shownDecimals && judged.value !== compared.compared
      ? ` (${unroundedWords(judged.value, compared.decimals, '')} before rounding)`
      : ''
  return `${SUBJECTS[subjectOf(clause)]}${shown}${before} ${compared.answer === 'met' ? 'meets' : 'does not meet'} the limit, ${words}`
}

const SUBJECTS = {
  value: '',
  deviation: 'deviation ',
  mean: 'mean ',
  estimate: 'estimate ',
  declared: 'declared value ',
} as const

function subjectOf({ statistic, deviation }: Comparison): keyof typeof SUBJECTS {
  if (statistic?.of === 'rolling-mean') return 'mean'
  if (statistic?.of === 'variables') return 'estimate'
  if (statistic?.of === 'declared') return 'declared'
  return deviation === undefined ? 'value' : 'deviation'
}

function censoredSentence(shown: string, words: string, answer: Answer): string {
  if (answer === 'cannot-decide')
    return `reported as below ${shown}, which does not decide the limit, ${words}`
  return `reported as below ${shown}, which ${answer === 'met' ? 'meets' : 'does not meet'} the limit, ${words}`
}

export function unitOf(limit: HeldLimit, clause: Comparison): { unit: string } {
  return { unit: KINDS[limit.quantities[0]?.kind ?? property(clause.property).kind].stored }
}

export function appliedLimit(limit: HeldLimit, clause: Comparison): AppliedLimit {
  return {
    operator: limit.operator,
    values: limit.quantities.map((quantity) => quantity.value),
    ...unitOf(limit, clause),
    written: limit.quantities.map((quantity) => quantity.written),
    layer: clause.layer,
  }
}
