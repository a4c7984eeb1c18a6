/** Clauses on several results of a source together, each by its own statistic. */
import { isBounded } from '../result/bounds.ts'
import type { Result } from '../result/result.ts'
import { judgeByAttributes } from './by-attributes.ts'
import { judgeByVariables } from './by-variables.ts'
import type { ClauseJudgement } from './judged-clause.ts'
import type { ComparisonCase } from './judging.ts'
import { judgeRollingMean } from './rolling-mean.ts'
import { judgeShareWithin } from './share-within-limits.ts'
import { noStatistic } from './series-of-results.ts'
import { reportVariability } from './variability.ts'

/**
 * Judges several results of a source together, by the clause's own statistic.
 * @param result the lot's own, which comes last in the series
 * @param key of the result, null for a mean of several
 * @throws RangeError for a clause without a statistic over results
 */
export function judgeStatistic(
  comparison: ComparisonCase,
  result: Result,
  key: string | null,
): ClauseJudgement {
  return { ...byStatistic(comparison, result), result: key }
}

function byStatistic(comparison: ComparisonCase, result: Result): ClauseJudgement {
  const { statistic } = comparison.clause
  if (isBounded(result)) return noStatistic()
  switch (statistic?.of) {
    case 'rolling-mean':
      return judgeRollingMean(comparison, statistic, result)
    case 'variables':
      return judgeByVariables(comparison, statistic, result)
    case 'attributes':
      return judgeByAttributes(comparison, statistic, result)
    case 'tolerance':
      return judgeShareWithin(comparison, statistic, result)
    case 'variability':
      return reportVariability(comparison, statistic, result)
    default:
      throw new RangeError(
        `judgeStatistic needs a statistic over results, got ${statistic?.of} in clause ${comparison.clause.id}`,
      )
  }
}
