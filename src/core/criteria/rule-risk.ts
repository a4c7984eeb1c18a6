/**
 * What a decision rule implies for the risk, in plain words: it stands with each verdict and with each set.
 */
import { type Criterion, type DecisionRule, everyClause, type Group } from './criterion.ts'
import { ruleName, rulesByDoubt } from './decision-rule.ts'
import { cumulative } from '../statistics/distributions.ts'
import { listWords } from '../../words/limit-words.ts'

/**
 * Chance that a result is accepted while the true value lies just beyond the limit, at its worst.
 * As specified nothing is kept for doubt, so that half of such results fall on the right side. Source: JCGM
 * 106:2012, section 9.
 */
export function riskAtLimit(rule: DecisionRule): number {
  if (!rulesByDoubt(rule)) return 0.5
  return rule.rule === 'guarded' ? 1 - cumulative(rule.k) : 1 - rule.p
}

/**
 * Chance that at least one of several independent routes lets such a lot through. @param risks of the single
 * routes
 */
export function jointRisk(risks: readonly number[]): number {
  return 1 - risks.reduce((stopped, risk) => stopped * (1 - risk), 1)
}

/** The rule in one sentence without a full stop. */
export function ruleWords(rule: DecisionRule): string {
  if (rule.rule === 'as-specified')
    return 'as specified: the value rounded to the limit’s digits is compared with the limit'
  const named = ruleName(rule)
  return rule.agreedIn === undefined
    ? `${named}, not agreed in writing, so judged as specified`
    : `${named}, agreed in ${rule.agreedIn}; nothing is rounded`
}

/**
 * The risk of a set in one sentence without a full stop: of its rule, of clauses with another, of groups of
 * which one member is enough.
 */
export function riskSentence(criterion: Criterion): string {
  const clauses = [...everyClause(criterion.clauses)]
  const others = clauses.filter((clause) => clause.form === 'comparison' && clause.decisionRule !== undefined)
  const byRisk = Map.groupBy(others, (clause) => riskAtLimit(clause.decisionRule ?? criterion.decisionRule))
  const groups = clauses.filter(
    (clause): clause is Group => clause.form === 'group' && clause.combine === 'any-of',
  )
  return [
    `a lot whose true value lies on a limit is accepted in up to ${percent(riskAtLimit(criterion.decisionRule))} of cases`,
    ...[...byRisk].map(
      ([risk, members]) =>
        `by the rule of ${listWords(
          members.map(({ id }) => id),
          'and',
        )} in up to ${percent(risk)}`,
    ),
    ...groups.flatMap((group) => jointWords(group, criterion)),
  ].join('; ')
}

function jointWords(group: Group, criterion: Criterion): string[] {
  const routes = group.members.filter((member) => !member.information)
  if (routes.length < 2) return []
  const risks = routes.map((member) =>
    riskAtLimit(member.decisionRule ?? group.decisionRule ?? criterion.decisionRule),
  )
  return [
    `on the limit of all ${routes.length} routes of ${group.id} in up to ${percent(jointRisk(risks))}, since one is enough`,
  ]
}

function percent(risk: number): string {
  const value = 100 * risk
  const rounded = value < 9.5 ? Number(value.toPrecision(2)) : Math.round(value)
  return `${Math.abs(rounded - value) < 1e-9 ? '' : 'about '}${rounded} %`
}
