/** Decision rules in words, and the risk that they leave. */
import type { Criterion, DecisionRule } from '../core/criteria/criterion.ts'
import type { AgreedRule, DoubtRule } from '../core/criteria/decision-rule.ts'
import { riskOfSet } from '../core/criteria/rule-risk.ts'
import { fixedDigits } from './numbers.ts'
import { listWords } from './sentences.ts'
import { toSignificant } from '../core/measure/rounding.ts'

/** "guard band of 1.645 standard uncertainties", "probability of conformity of at least 0.95". */
export function ruleName(rule: DoubtRule): string {
  return rule.rule === 'guarded'
    ? `guard band of ${rule.k} standard uncertainties`
    : `probability of conformity of at least ${rule.p}`
}

export function agreedRuleName(rule: AgreedRule): string {
  return `${ruleName(rule)} agreed in ${rule.agreedIn}`
}

/** The rule in one sentence without a full stop. */
export function ruleWords(rule: DecisionRule): string {
  if (rule.rule === 'as-specified')
    return 'as specified: the value rounded to the limit’s digits is compared with the limit'
  return rule.agreedIn === undefined
    ? `${ruleName(rule)}, not agreed in writing, so judged as specified`
    : `${ruleName(rule)}, agreed in ${rule.agreedIn}; nothing is rounded`
}

/** The risk of a set in one sentence without a full stop. */
export function riskSentence(criterion: Criterion): string {
  const { own, clauses, groups } = riskOfSet(criterion)
  return [
    `a lot whose true value lies on a limit is accepted in up to ${percent(own)} of cases`,
    ...clauses.map(
      ({ risk, clauses: ids }) => `by the rule of ${listWords(ids, 'and')} in up to ${percent(risk)}`,
    ),
    ...groups.map(
      ({ group, routes, risk }) =>
        `on the limit of all ${routes} routes of ${group} in up to ${percent(risk)}, since one is enough`,
    ),
  ].join('; ')
}

/** Two digits below ten per cent, whole per cents above. */
function percent(risk: number): string {
  const value = 100 * risk
  const rounded = value < 9.5 ? toSignificant(value, 2) : Number(fixedDigits(value, 0))
  return `${Math.abs(rounded - value) < 1e-9 ? '' : 'about '}${rounded} %`
}
