/** Decision rules in words, and the risk that they leave. */
import type { Criterion, DecisionRule } from '../core/criteria/criterion.ts'
import type { AgreedRule, DoubtRule } from '../core/criteria/decision-rule.ts'
import { riskOfSet } from '../core/criteria/rule-risk.ts'
import type { ClauseOutcome } from '../core/criteria/verdict.ts'
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

/**
 * What is said once of a set, without a full stop, in place of the same remark on every lot.
 * @param titles of clauses whose value has no uncertainty, one or more
 */
export function undecidedWords(rule: AgreedRule, titles: readonly string[]): string {
  const [clauses, stay] = titles.length === 1 ? ['this clause', 'it stays'] : ['these clauses', 'they stay']
  return `no laboratory on record states an uncertainty for ${listWords(titles, 'and')}, so the ${agreedRuleName(rule)} cannot decide ${clauses} and ${stay} inconclusive for every lot; state the repeatability in the laboratory’s record, or give ${clauses} “decision-rule: { as-specified: yes }”`
}

/**
 * The risk of a set in one sentence without a full stop.
 * @param outcomes of a verdict under it, whose uncertainties are known; none without it
 * @param titleOf names a clause or group for the reader; by its id without it
 */
export function riskSentence(
  criterion: Criterion,
  outcomes: readonly ClauseOutcome[] = [],
  titleOf: (id: string) => string = (id) => id,
): string {
  const { own, clauses, groups } = riskOfSet(criterion, outcomes)
  const named = (ids: readonly string[]) => listWords(ids.map(titleOf), 'and')
  return [
    `a lot whose true value lies on a limit is accepted in ${own === null ? HALF_OR_MORE : `up to ${percent(own)} of cases`}`,
    ...clauses.map(({ risk, by, clauses: ids }) =>
      risk === null
        ? `by the rule of ${named(ids)} in ${HALF_OR_MORE}`
        : by === 'rule'
          ? `by the rule of ${named(ids)} in up to ${percent(risk)}`
          : `for ${named(ids)} in ${percent(risk)}, given ${ids.length === 1 ? 'its uncertainty' : 'their uncertainties'}`,
    ),
    ...groups.map(
      ({ group, routes, risk }) =>
        `a lot on the limits of ${routes === 2 ? 'both' : `all ${routes}`} routes of ${titleOf(group)} ${risk === null ? 'more often still' : `in at most ${percent(risk)}`}, since one is enough`,
    ),
  ].join('; ')
}

const HALF_OR_MORE = 'half of cases or more, since values are rounded first'

/** Two digits below ten per cent, whole per cents above; never 0 or 100 of what is neither. */
function percent(risk: number): string {
  const value = 100 * risk
  if (99.5 <= value && value < 100) return 'more than 99 %'
  const rounded = value < 9.5 ? toSignificant(value, 2) : Number(fixedDigits(value, 0))
  return `${Math.abs(rounded - value) < 1e-9 ? '' : 'about '}${rounded} %`
}
