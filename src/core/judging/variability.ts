/** One source's variability, reported without a limit: moving average, scatter, and testing error in it. */
import { historyKey } from '../history/history.ts'
import { defined } from '../measure/defined.ts'
import { duplicatesOf } from '../result/duplicates.ts'
import type { Duplicates, PrecedingResult, Result } from '../result/result.ts'
import { mean, standardDeviation } from '../statistics/descriptive.ts'
import { testingError, withoutTesting } from '../statistics/testing-error.ts'
import { type ClauseJudgement, judgement } from './judged-clause.ts'
import type { ComparisonCase } from './judging.ts'
import { reportedValue } from './reported-value.ts'
import { lastResults, noStatistic, type StatisticOf, statisticFigure, tooFew } from './series-of-results.ts'

/** Results that the moving average takes in: ASTM C917 (from memory). */
const MOVING = 5

/**
 * Reports what a source's results vary by; nothing is judged.
 * Notes: 1. the lot's own duplicates count with those before it; 2. of duplicates the first stands for its lot, as
 * single tests do for theirs: a mean of two would hold half of the testing error, which is taken out whole (ASTM
 * C917, from memory).
 */
export function reportVariability(
  comparison: ComparisonCase,
  { count }: StatisticOf<'variability'>,
  result: Result,
): ClauseJudgement {
  const { preceding, bounded } = lastResults(comparison, result, count)
  if (bounded) return noStatistic()
  const own = { value: result.value, ...defined({ duplicates: ownDuplicates(comparison, result) }) }
  const tested: readonly Pick<PrecedingResult, 'value' | 'duplicates'>[] = [...preceding, own]
  if (tested.length < 2) return tooFew(tested.length, 2)
  const found = variabilityOf(
    tested.map(({ value, duplicates }) => duplicates?.first ?? value),
    tested.flatMap(({ duplicates }) => duplicates?.difference ?? []),
  )
  const { decimals, unit } = statisticFigure(comparison, found.standardDeviation)
  return {
    ...judgement('reported', { code: 'variability', params: { ...found, decimals, unit } }),
    ...reportedValue(comparison.clause, result, null),
  }
}

function ownDuplicates({ evidence }: ComparisonCase, result: Result): Duplicates | undefined {
  const series = ({ property, condition, age, method }: Result) =>
    historyKey(null, property, condition, age, method)
  return duplicatesOf(
    result,
    evidence.results.filter((other) => series(other) === series(result)),
  )
}

export interface Variability {
  /** Of the last five results; null for fewer. */
  readonly movingAverage: number | null
  /** Of all results, the scatter of testing in it. */
  readonly standardDeviation: number
  readonly n: number
  /** Testing error from duplicates, and the scatter left without it; null without duplicates. */
  readonly testing: { readonly error: number; readonly corrected: number; readonly pairs: number } | null
}

/**
 * What a source's results vary by, and what is left of it without testing error.
 * @param values of one series, at least two, oldest first, in the stored unit
 * @param differences of duplicate tests in that unit, any number; signs do not count
 * @throws RangeError for fewer than two values
 * Note: what is left is zero where the testing error exceeds the whole.
 * Source: ASTM C917 and C1451 (testing error read in their abstracts, the estimates from memory).
 */
export function variabilityOf(values: readonly number[], differences: readonly number[]): Variability {
  const total = standardDeviation(values)
  return {
    movingAverage: values.length < MOVING ? null : mean(values.slice(-MOVING)),
    standardDeviation: total,
    n: values.length,
    testing: differences.length === 0 ? null : testingOf(total, differences),
  }
}

function testingOf(total: number, differences: readonly number[]): NonNullable<Variability['testing']> {
  const error = testingError(differences)
  return { error, corrected: withoutTesting(total, error), pairs: differences.length }
}
