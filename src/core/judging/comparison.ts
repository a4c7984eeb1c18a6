/** One comparison: the results that count, or what stands in their place, against the limits of the class. */
import type { Comparison } from '../criteria/criterion.ts'
import { limitsForClass } from '../criteria/limits-for-class.ts'
import { premisesForClass } from '../criteria/premise.ts'
import type { ClauseOutcome } from '../criteria/verdict.ts'
import { judgeAgainstLimits } from './against-limits.ts'
import { firstLimit } from './applied-limit.ts'
import { declaredQuantity } from './deviation-reference.ts'
import { withFinishedNotes } from './finished-notes.ts'
import { type ClauseJudgement, clauseOutcome, judgement } from './judged-clause.ts'
import type { ComparisonCase, Judging } from './judging.ts'
import { withOtherSamples } from './other-samples.ts'
import { allSurelyHold } from './premises.ts'
import { outOfScope } from './scope.ts'
import { selectResults } from './select-result.ts'
import { judgeSeveral } from './several-results.ts'

/** Judges a comparison; the outcome carries the value, the limit and the reasons. */
export function judgeComparison(clause: Comparison, judging: Judging): ClauseOutcome {
  return clauseOutcome(clause, outOfScope(clause, judging) ?? judgeInScope(clause, judging))
}

function judgeInScope(clause: Comparison, judging: Judging): ClauseJudgement {
  const comparison = { ...judging, clause, limits: limitsForClass(clause.limits, judging.lotClass) }
  if (clause.statistic?.of === 'declared') return { ...firstLimit(comparison), ...judgeDeclared(comparison) }
  const selection = selectResults(clause, judging.evidence)
  if (selection.found === 'results') {
    const { results, passedOver } = selection
    const judged = withFinishedNotes(judgeSeveral(comparison, results), results)
    return withOtherSamples(comparison, judged, passedOver)
  }
  return {
    ...firstLimit(comparison),
    ...(deemedToSatisfy(comparison) ?? {
      ...judgement(selection.outcome, selection.reason),
      ...(selection.outcome === 'pending' ? { due: selection.due } : {}),
    }),
  }
}

/**
 * Where no valid result stands, the facts that make a test needless; a result on record is judged whatever
 * they say.
 */
function deemedToSatisfy({ clause, evidence, lotClass }: ComparisonCase): ClauseJudgement | undefined {
  const { deemedBy } = clause
  if (deemedBy === undefined || allSurelyHold(deemedBy, evidence, lotClass).holds !== 'yes') return undefined
  const premises = premisesForClass(deemedBy, lotClass)
  return judgement('meets', { code: 'deemed-to-satisfy', params: { premises } })
}

function judgeDeclared(comparison: ComparisonCase): ClauseJudgement {
  const declared = declaredQuantity(comparison.clause.property, comparison.evidence)
  return declared === undefined
    ? judgement('not-reported', { code: 'no-declared-value', params: {} })
    : judgeAgainstLimits(comparison, declared, { key: null, asSpecified: true })
}
