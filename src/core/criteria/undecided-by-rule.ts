/** Clauses that a rule by uncertainty can never decide, because nobody knows an uncertainty of what they judge. */
import { type Comparison, type Criterion, everyClause } from './criterion.ts'
import { type AgreedRule, isSameRule, rulesByDoubt } from './decision-rule.ts'

/** An agreed rule, and the comparisons that stay inconclusive under it for every lot. */
export interface UndecidedByRule {
  readonly rule: AgreedRule
  readonly clauses: readonly Comparison[]
}

/**
 * The comparisons of a set that its agreed rules leave open for every lot.
 * @param isKnown whether a laboratory states, or can pool, an uncertainty of what a clause judges
 * @returns one entry for each rule, in reading order; none where every clause can be decided
 * Notes: 1. a statistic and a declared value are judged as specified whatever the rule, bands and a mere report are
 * not held against a limit; 2. a clause for information counts, for its outcome is printed as well.
 */
export function undecidedByRule(
  { clauses, decisionRule }: Pick<Criterion, 'clauses' | 'decisionRule'>,
  isKnown: (clause: Comparison) => boolean,
): UndecidedByRule[] {
  const found: { rule: AgreedRule; clauses: Comparison[] }[] = []
  for (const clause of everyClause(clauses)) {
    const rule = clause.decisionRule ?? decisionRule
    if (clause.form !== 'comparison' || !rulesByDoubt(rule) || !isHeldAgainstLimit(clause) || isKnown(clause))
      continue
    const alike = found.find((entry) => isSameRule(entry.rule, rule))
    if (alike === undefined) found.push({ rule, clauses: [clause] })
    else alike.clauses.push(clause)
  }
  return found
}

function isHeldAgainstLimit({ statistic, bands, limits }: Comparison): boolean {
  return (
    statistic === undefined && bands === undefined && limits.some(({ operator }) => operator !== 'report')
  )
}
