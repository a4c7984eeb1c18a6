/** What a decision rule makes of a comparison as specified. */
import type { DecisionRule } from './criterion.ts'
import type { Outcome } from './verdict.ts'

/**
 * A guarded or probability rule needs the standard uncertainty of the result, which no record states yet: it cannot decide.
 * Where nobody agreed on the rule, one party cannot guard another's limit alone, and the set is judged as specified.
 */
export function outcomeUnderRule(rule: DecisionRule, asSpecified: { outcome: Outcome; reason: string }): { outcome: Outcome; reason: string } {
  if (rule.rule === 'as-specified') return asSpecified
  const named = rule.rule === 'guarded' ? `guard band of ${rule.k} standard uncertainties` : `probability of conformity ${rule.p}`
  if (rule.agreedIn === undefined) return { ...asSpecified, reason: `${asSpecified.reason}; the ${named} is not agreed in writing, so judged as specified` }
  return { outcome: 'inconclusive', reason: `no uncertainty stated, which the ${named} agreed in ${rule.agreedIn} needs; as specified, ${asSpecified.reason}` }
}
