/** What a decision rule implies for the risk of accepting a lot beyond its limit. */
import { cumulative } from '../statistics/distributions.ts'
import { type Criterion, type DecisionRule, everyClause, type Group } from './criterion.ts'
import { rulesByDoubt } from './decision-rule.ts'

/**
 * Chance that a result is accepted while the true value lies just beyond the limit, at its worst.
 * @returns 0.5 as specified, where half of such results fall on the right side; 1 − Φ(k) for a guard band;
 * 1 − p for a probability
 * Notes: 1. of the rule, not of a value; 2. rounding to the limit's digits widens acceptance by up to half a
 * step: with a step of 1 and an uncertainty of 2 the half becomes 0.60; 3. a normal distribution is taken.
 * Source: JCGM 106:2012, 8.3.1.2 (as specified), 8.3.2.3 (guard band), 9.3.2 (probability).
 */
export function riskAtLimit(rule: DecisionRule): number {
  // JCGM 106:2012, 8.3.1.2: up to 50 %.
  if (!rulesByDoubt(rule)) return 0.5
  // JCGM 106:2012, 8.3.2.3 and 9.3.2.
  return rule.rule === 'guarded' ? 1 - cumulative(rule.k) : 1 - rule.p
}

/**
 * Chance that at least one of several independent routes lets such a lot through.
 * @param risks of the single routes, each from 0 to 1
 * @returns from 0 to 1; 0 for no route
 * Note: routes that share a control are not independent; their joint risk is smaller than this.
 */
export function jointRisk(risks: readonly number[]): number {
  // Of independent events: 1 − Π(1 − r).
  return 1 - risks.reduce((stopped, risk) => stopped * (1 - risk), 1)
}

/**
 * The risks of a set: of its own rule, of clauses with another, and of groups of which one member is enough.
 */
export interface RiskOfSet {
  readonly own: number
  /** Clauses with a rule of their own, by id, that share a risk. */
  readonly clauses: readonly { readonly risk: number; readonly clauses: readonly string[] }[]
  /** Groups of two or more routes: the risk on the limit of all of them. */
  readonly groups: readonly { readonly group: string; readonly routes: number; readonly risk: number }[]
}

/** The risks of a set at its limits, for information. */
export function riskOfSet(criterion: Criterion): RiskOfSet {
  const clauses = [...everyClause(criterion.clauses)]
  const others = clauses.filter((clause) => clause.form === 'comparison' && clause.decisionRule !== undefined)
  const byRisk = Map.groupBy(others, (clause) => riskAtLimit(clause.decisionRule ?? criterion.decisionRule))
  return {
    own: riskAtLimit(criterion.decisionRule),
    clauses: [...byRisk].map(([risk, members]) => ({ risk, clauses: members.map(({ id }) => id) })),
    groups: clauses.flatMap((clause) =>
      clause.form === 'group' && clause.combine === 'any-of' ? riskOfRoutes(clause, criterion) : [],
    ),
  }
}

function riskOfRoutes(group: Group, criterion: Criterion): RiskOfSet['groups'] {
  const routes = group.members.filter((member) => !member.information)
  if (routes.length < 2) return []
  const risks = routes.map((member) =>
    riskAtLimit(member.decisionRule ?? group.decisionRule ?? criterion.decisionRule),
  )
  return [{ group: group.id, routes: routes.length, risk: jointRisk(risks) }]
}
