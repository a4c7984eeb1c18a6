/** What a decision rule implies for the risk of accepting a lot beyond its limit. */
import { cumulative } from '../statistics/distributions.ts'
import { type Clause, type Criterion, type DecisionRule, everyClause, type Group } from './criterion.ts'
import { rulesByDoubt } from './decision-rule.ts'
import { type ClauseOutcome, type DoubtOfOutcome, everyClauseOutcome } from './verdict.ts'

/**
 * Chance that a result is accepted while the true value lies on the limit.
 * @param known standard uncertainty of the value and the step that it is rounded to, in one unit; undefined
 * where the uncertainty is not known
 * @returns Φ(step / 2u) as specified, where rounding admits what lies half a step beyond the limit: 0.5 without a
 * step, 0.60 for a step of 1 and an uncertainty of 2, and null where the uncertainty is not known, which is half
 * or more; 1 − Φ(k) for a guard band; 1 − p for a probability
 * Notes: 1. a normal distribution is taken; 2. of a limit on both sides, the side that the value lies on.
 * Source: JCGM 106:2012, 8.3.1.2 (as specified), 8.3.2.3 (guard band), 9.3.2 (probability); ASTM E29, 6.4.3 (half
 * a step, read second-hand).
 */
export function riskAtLimit(rule: DecisionRule, known?: Pick<DoubtOfOutcome, 'u' | 'step'>): number | null {
  // JCGM 106:2012, 8.3.2.3 and 9.3.2.
  if (rulesByDoubt(rule)) return rule.rule === 'guarded' ? 1 - cumulative(rule.k) : 1 - rule.p
  if (known === undefined) return null
  // JCGM 106:2012, 8.3.1.2, with the acceptance limit half a step beyond the limit.
  if (known.step === 0) return 0.5
  return known.u === 0 ? 1 : cumulative(known.step / (2 * known.u))
}

/**
 * Chance that at least one of several routes lets such a lot through, if they are independent.
 * @param risks of the single routes, each from 0 to 1; null for half or more
 * @returns from 0 to 1; 0 for no route; null where one of them is not known
 * Note: routes that share a control or a material rise and fall together, and their joint risk is smaller: this is
 * the most that it can be.
 */
export function jointRisk(risks: readonly (number | null)[]): number | null {
  // Of independent events: 1 − Π(1 − r).
  return risks.reduce<number | null>(
    (joint, risk) => (joint === null || risk === null ? null : 1 - (1 - joint) * (1 - risk)),
    0,
  )
}

/**
 * The risks of a set: of its own rule, of clauses with another, and of groups of which one member is enough. Null
 * stands for half or more, since values are rounded first.
 */
export interface RiskOfSet {
  readonly own: number | null
  /** Clauses, by id, that share a risk which is not the set's: by a rule of their own, or by a known uncertainty. */
  readonly clauses: readonly RiskOfClauses[]
  /** Groups of two or more routes: the largest risk on the limits of all of them. */
  readonly groups: readonly {
    readonly group: string
    readonly routes: number
    readonly risk: number | null
  }[]
}

interface RiskOfClauses {
  readonly risk: number | null
  readonly by: 'rule' | 'uncertainty'
  readonly clauses: readonly string[]
}

/**
 * The risks of a set at its limits, for information.
 * @param outcomes of a verdict under the set, whose uncertainties are taken; none without it
 */
export function riskOfSet(criterion: Criterion, outcomes: readonly ClauseOutcome[] = []): RiskOfSet {
  const risks = risksOfClauses(criterion, outcomes)
  const own = riskAtLimit(criterion.decisionRule)
  return {
    own,
    clauses: riskyClauses(risks, own),
    groups: [...everyClause(criterion.clauses)].flatMap((clause) =>
      clause.form === 'group' && clause.combine === 'any-of' ? riskOfRoutes(clause, risks) : [],
    ),
  }
}

interface RiskOfClause {
  readonly clause: Clause
  readonly risk: number | null
  readonly by: RiskOfClauses['by'] | 'set'
}

function risksOfClauses(
  { clauses, decisionRule }: Criterion,
  outcomes: readonly ClauseOutcome[],
): Map<string, RiskOfClause> {
  const doubts = new Map([...everyClauseOutcome(outcomes)].map(({ id, doubt }) => [id, doubt]))
  return new Map(
    [...everyClause(clauses)].map((clause) => {
      const rule = clause.decisionRule ?? decisionRule
      const known = doubts.get(clause.id)
      const byDoubt = !rulesByDoubt(rule) && known !== undefined
      const by = byDoubt ? 'uncertainty' : clause.decisionRule === undefined ? 'set' : 'rule'
      return [clause.id, { clause, risk: riskAtLimit(rule, known), by }]
    }),
  )
}

/** Comparisons whose risk is not the set's. */
function riskyClauses(risks: ReadonlyMap<string, RiskOfClause>, own: number | null): RiskOfClauses[] {
  const others = [...risks.values()].filter(
    ({ clause, by, risk }) => clause.form === 'comparison' && by !== 'set' && risk !== own,
  )
  return [...Map.groupBy(others, ({ by, risk }) => `${by}|${risk}`).values()].flatMap((alike) => {
    const [first] = alike
    return first === undefined || first.by === 'set'
      ? []
      : [{ risk: first.risk, by: first.by, clauses: alike.map(({ clause }) => clause.id) }]
  })
}

function riskOfRoutes({ id, members }: Group, risks: ReadonlyMap<string, RiskOfClause>): RiskOfSet['groups'] {
  const routes = members.filter((member) => !member.information)
  if (routes.length < 2) return []
  const risk = jointRisk(routes.map((member) => risks.get(member.id)?.risk ?? null))
  return [{ group: id, routes: routes.length, risk }]
}
