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
 * Whether a rule takes the uncertainty of a value into account: one that both parties have agreed on in
 * writing.
 * Note: one party cannot guard another's limit, so that without an agreement the set is judged as specified.
 */
export function rulesByDoubt(rule: DecisionRule): rule is AgreedRule {
  return rule.rule !== 'as-specified' && rule.agreedIn !== undefined
}

/**
 * Whether two rules decide alike and were agreed on in the same place.
 * @param a,b undefined where none is stated, which is not the same as judging as specified
 */
export function isSameRule(a: DecisionRule | undefined, b: DecisionRule | undefined): boolean {
  if (a === undefined || b === undefined || a.rule === 'as-specified' || b.rule === 'as-specified')
    return a?.rule === b?.rule
  const factor = (rule: DoubtRule) => (rule.rule === 'guarded' ? rule.k : rule.p)
  return a.rule === b.rule && factor(a) === factor(b) && a.agreedIn === b.agreedIn
}

/**
 * The values that an operator admits.
 * @param values of the limit, in the stored unit: two for `between`, else one
 * @returns an interval in that unit; whether its ends count is the operator's to say
 */
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
 * Outcome under a guarded or probability rule.
 * @param value estimate, unrounded
 * @param limits what is admitted, in the unit of the value
 * @param uncertainty standard uncertainty in that unit, zero or more
 * @returns `inconclusive` where neither conformity nor the lack of it is shown
 * Notes: 1. nothing is rounded; sums are compared at 12 significant digits; 2. a value on the limit of
 * acceptance meets, one on the limit of rejection does not.
 * Source: JCGM 106:2012, 8.3.2 (guarded acceptance), 8.3.3 (guarded rejection), 7.2.6 (probability).
 */
export function underDoubt(
  rule: DoubtRule,
  value: number,
  { low, high }: Admitted,
  uncertainty: Uncertainty,
): Outcome {
  if (rule.rule === 'guarded') {
    // JCGM 106:2012, 8.3.2 and 8.3.3; g = k u as in 8.3.2.3.
    const guard = guardFactor(rule.k, uncertainty.df) * uncertainty.u
    if (atMost(low + guard, value) && atMost(value, high - guard)) return 'meets'
    return atMost(value, low - guard) || atMost(high + guard, value) ? 'does-not-meet' : 'inconclusive'
  }
  // JCGM 106:2012, 7.2.6, equation (6), against p and 1 − p.
  const chance = chanceOfMeeting(value, { low, high }, uncertainty)
  if (atMost(rule.p, chance)) return 'meets'
  return atMost(chance, 1 - rule.p) ? 'does-not-meet' : 'inconclusive'
}

/** Of two sums of decimals, apart from the dust of binary arithmetic. */
function atMost(a: number, b: number): boolean {
  return withoutDust(a) <= withoutDust(b)
}

/**
 * Guard factor for an uncertainty of few degrees of freedom, at the same one-sided risk.
 * @param k factor for the normal distribution, zero or more
 * @param df degrees of freedom, above zero; undefined where not known, which leaves k
 * @returns Student's quantile: 1.833 for k 1.645 and df 9
 * Source: JCGM 100:2008, G.3.2 and G.3.4, note; JCGM 106:2012, 8.3.3, example 2.
 */
export function guardFactor(k: number, df: number | undefined): number {
  // JCGM 100:2008, G.3.2 and G.3.4, note: the t quantile at the one-sided risk of k.
  return df === undefined ? k : quantile(cumulative(k), df)
}

/**
 * Standard uncertainties that a rule keeps between a value and a limit.
 * @param df degrees of freedom, above zero; undefined where not known
 * @returns k at the same one-sided risk for a guard band; for a probability the quantile that reaches it against
 * a limit on one side
 * Source: JCGM 106:2012, 8.3.2.3 (guard band), 7.2.6 (probability); JCGM 100:2008, G.3.2 (few degrees of freedom).
 */
export function factorOf(rule: DoubtRule, df: number | undefined): number {
  return rule.rule === 'guarded' ? guardFactor(rule.k, df) : quantile(rule.p, df)
}

/**
 * Probability that the true value lies within the limits.
 * @param value estimate, unrounded, in the unit of limits and uncertainty
 * @returns from 0 to 1; without any uncertainty 1 inside or on a limit, else 0
 * Source: JCGM 106:2012, 7.2.6, equation (6), two-sided also 7.4, equation (11); Student's t where degrees of
 * freedom are known, 7.2.3.
 */
export function chanceOfMeeting(value: number, { low, high }: Admitted, { u, df }: Uncertainty): number {
  if (u === 0) return low <= value && value <= high ? 1 : 0
  // JCGM 106:2012, 7.2.6, equation (6).
  return cumulative((high - value) / u, df) - cumulative((low - value) / u, df)
}
