/** One result by what its clause asks of it: a band, a statistic, a deviation, a limit, or a report. */
import { rulesByDoubt } from '../criteria/decision-rule.ts'
import { property } from '../measure/properties.ts'
import type { Result } from '../result/result.ts'
import type { Uncertainty } from '../result/uncertainty.ts'
import { judgeAgainstLimits, type JudgedWith } from './against-limits.ts'
import { classified } from './bands.ts'
import { judgeDeviation } from './deviation-clause.ts'
import { type ClauseJudgement, judgement } from './judged-clause.ts'
import type { ComparisonCase } from './judging.ts'
import { reportedValue } from './reported-value.ts'
import { judgeStatistic } from './statistic.ts'

/**
 * One result by what its clause asks of it.
 * @param judgedWith key of the result, null for a mean of several; uncertainty where the clause asks for one
 * @throws RangeError for a statistic that is none over results, or that has no limit for the class
 */
export function judgeResult(
  comparison: ComparisonCase,
  result: Result,
  judgedWith: JudgedWith,
): ClauseJudgement {
  const { clause } = comparison
  const { key } = judgedWith
  if (clause.bands !== undefined) return classified(comparison, result, key)
  if (clause.statistic !== undefined) return judgeStatistic(comparison, result, key)
  if (comparison.limits.length === 0)
    return {
      ...judgement('reported', { code: 'reported-without-limit', params: {} }),
      ...reportedValue(clause, result, key),
    }
  if (clause.deviation !== undefined) return judgeDeviation(comparison, result, judgedWith)
  return judgeAgainstLimits(comparison, result, judgedWith)
}

/**
 * The uncertainty of a result where it is asked for: by a rule that takes doubt into account, and for every
 * index, which is printed with its doubt.
 * @returns undefined where it is not asked for, or the laboratory states none
 */
export function uncertaintyFor(
  { clause, criterion, evidence }: ComparisonCase,
  result: Result,
): Uncertainty | undefined {
  const asked =
    rulesByDoubt(clause.decisionRule ?? criterion.decisionRule) ||
    property(clause.property).nature === 'index'
  return asked ? evidence.uncertaintyOf?.(result) : undefined
}
