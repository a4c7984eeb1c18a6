/** The mean of the last so many results against the limit. */
import type { Result } from '../result/result.ts'
import { mean } from '../statistics/descriptive.ts'
import { judgeAgainstLimits } from './against-limits.ts'
import { type ClauseJudgement, withReason } from './judged-clause.ts'
import type { ComparisonCase } from './judging.ts'
import { lastResults, noStatistic, type StatisticOf, tooFew } from './series-of-results.ts'

/**
 * Judges the mean of the last so many results; with fewer the history is insufficient.
 * @throws RangeError for a clause without a limit for the class
 */
export function judgeRollingMean(
  comparison: ComparisonCase,
  { count }: StatisticOf<'rolling-mean'>,
  result: Result,
): ClauseJudgement {
  const { values, lots, bounded } = lastResults(comparison, result, count)
  if (bounded) return noStatistic()
  if (values.length < count) return tooFew(values.length, count)
  const value = mean(values)
  const judged = judgeAgainstLimits(comparison, { value }, { key: null, asSpecified: true })
  return {
    ...withReason(judged, { code: 'rolling-mean', params: { n: count } }),
    against: { mean: value, n: count, lots, values: values.slice(0, -1) },
  }
}
