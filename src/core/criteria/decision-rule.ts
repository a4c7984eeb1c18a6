/**
 * Guarded and probability rules: what a value and its standard uncertainty decide about a limit. Nothing is
 * rounded under them.
 */
import type { Uncertainty } from '../result/uncertainty.ts'
import type { DecisionRule, Operator } from './criterion.ts'
import { cumulative, quantile } from '../statistics/distributions.ts'
import { withoutDust } from '../measure/rounding.ts'
import type { Outcome } from './outcome.ts'

/** What a limit admits, in the stored unit; an open side is infinite. */
export interface Admitted {
  readonly low: number
  readonly high: number
}

/** The rules that use an uncertainty. */
export type DoubtRule = Exclude<DecisionRule, { rule: 'as-specified' }>
/** One that both parties have agreed on in writing. */
export type AgreedRule = DoubtRule & { readonly agreedIn: string }

/**
 * Whether doubt decides; without an agreement one party cannot guard another's limit, and the set is judged as
 * specified.
 */
export function rulesByDoubt(rule: DecisionRule): rule is AgreedRule {
  return rule.rule !== 'as-specified' && rule.agreedIn !== undefined
}

/** The values that an operator admits. @param values in the stored unit, two for `between` */
export function admitted(operator: Operator, values: readonly number[]): Admitted {
  const [first = Number.NaN, second = Number.NaN] = values
  switch (operator) {
    case 'at-least':
    case 'above':
      return { low: first, high: Number.POSITIVE_INFINITY }
    case 'at-most':
    case 'below':
      return { low: Number.NEGATIVE_INFINITY, high: first }
    case 'between':
      return { low: first, high: second }
    case 'magnitude-at-most':
      return { low: -first, high: first }
    case 'report':
      return { low: Number.NEGATIVE_INFINITY, high: Number.POSITIVE_INFINITY }
  }
}

/**
 * Outcome under a rule that takes doubt into account.
 * @param value estimate, unrounded, and `limits`, in one unit
 * @param uncertainty standard uncertainty in the same unit
 * Source: JCGM 106:2012, section 8.3 for guard bands on both sides, section 7 for the conformance
 * probability.
 */
export function underDoubt(
  rule: DoubtRule,
  value: number,
  { low, high }: Admitted,
  uncertainty: Uncertainty,
): Outcome {
  if (rule.rule === 'guarded') {
    const guard = guardFactor(rule.k, uncertainty.df) * uncertainty.u
    if (atMost(low + guard, value) && atMost(value, high - guard)) return 'meets'
    return atMost(value, low - guard) || atMost(high + guard, value) ? 'does-not-meet' : 'inconclusive'
  }
  const chance = chanceOfMeeting(value, { low, high }, uncertainty)
  if (atMost(rule.p, chance)) return 'meets'
  return atMost(chance, 1 - rule.p) ? 'does-not-meet' : 'inconclusive'
}

/** Of two sums of decimals, apart from the dust of binary arithmetic; an open side is infinite. */
function atMost(a: number, b: number): boolean {
  return !Number.isFinite(a) || !Number.isFinite(b) ? a <= b : withoutDust(a) <= withoutDust(b)
}

/**
 * Guard factor for an uncertainty of few degrees of freedom: Student's quantile at the same one-sided risk.
 * Source: JCGM 100:2008 (GUM), annex G.3, by which k of the normal distribution becomes a t-factor.
 */
export function guardFactor(k: number, df: number | undefined): number {
  return df === undefined ? k : quantile(cumulative(k), df)
}

/**
 * Chance that the true value lies in the interval. Source: JCGM 106:2012, equations 7 to 10; Student's
 * distribution where degrees of freedom are known.
 */
export function chanceOfMeeting(value: number, { low, high }: Admitted, { u, df }: Uncertainty): number {
  if (u === 0) return low <= value && value <= high ? 1 : 0
  return cumulativeAt((high - value) / u, df) - cumulativeAt((low - value) / u, df)
}

function cumulativeAt(x: number, df: number | undefined): number {
  if (x === Number.POSITIVE_INFINITY) return 1
  return x === Number.NEGATIVE_INFINITY ? 0 : cumulative(x, df)
}
