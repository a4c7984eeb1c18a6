/** The results that a statistic is made of: the lot's own last, those before it by the order of sampling. */
import type { Comparison, Statistic } from '../criteria/criterion.ts'
import type { Figure } from '../criteria/reason.ts'
import type { SampleOfDuty } from '../history/sample-of-duty.ts'
import { property, storedUnit } from '../measure/properties.ts'
import { isBounded } from '../result/bounds.ts'
import type { PrecedingResult, Result } from '../result/result.ts'
import { type ClauseJudgement, judgement } from './judged-clause.ts'
import type { ComparisonCase } from './judging.ts'

/** One kind of statistic as a clause writes it. */
export type StatisticOf<K extends Statistic['of']> = Extract<Statistic, { of: K }>

export interface ResultSeries {
  /** Oldest first, the lot's own last. */
  readonly values: readonly number[]
  /** Ids of the lots before it. */
  readonly lots: readonly string[]
  readonly preceding: readonly PrecedingResult[]
  /** One of them is known only within bounds, so that no statistic is a number. */
  readonly bounded: boolean
}

/**
 * The most recent results; fewer where the source has fewer.
 * @param count how many in all, the lot's own included
 */
export function lastResults(
  { clause, evidence }: ComparisonCase,
  result: Result,
  count: number,
): ResultSeries {
  const { property: key, condition, age } = clause
  const before = sampleJudged(clause, result)
  return seriesOf(
    count === 1 ? [] : evidence.preceding(key, condition, age, result.method, count - 1, before),
    result,
  )
}

/**
 * The control period of a clause, the lot's own result included.
 * @param days that the period reaches back from the lot
 */
export function resultsOfPeriod(
  { clause, evidence }: ComparisonCase,
  result: Result,
  days: number,
): ResultSeries {
  const { property: key, condition, age } = clause
  const before = sampleJudged(clause, result)
  return seriesOf(evidence.period?.(key, condition, age, result.method, days, before) ?? [], result)
}

/** The sample that is judged for itself where the clause names a duty; undefined where it judges the lot. */
export function sampleJudged(
  { duty }: Pick<Comparison, 'duty'>,
  { sample }: Pick<Result, 'sample'>,
): SampleOfDuty | undefined {
  return duty === undefined ? undefined : { duty, sample }
}

function seriesOf(preceding: readonly PrecedingResult[], result: Result): ResultSeries {
  return {
    values: [...preceding.map((entry) => entry.value), result.value],
    lots: preceding.map((entry) => entry.lot),
    preceding,
    bounded: [...preceding, result].some(isBounded),
  }
}

/**
 * The outcome of a statistic over fewer results than its clause needs.
 * @param n results on record
 * @param atLeast results that the clause needs
 */
export function tooFew(n: number, atLeast: number): ClauseJudgement {
  return judgement('insufficient-history', { code: 'too-few-results', params: { n, atLeast } })
}

/** The outcome of a statistic over results of which one is known only within bounds. */
export function noStatistic(): ClauseJudgement {
  return judgement('not-reported', { code: 'no-statistic-of-censored', params: {} })
}

/**
 * A statistic of a property, with one decimal more than its results are printed with.
 * @param value in the stored unit of the property
 */
export function statisticFigure({ clause }: Pick<ComparisonCase, 'clause'>, value: number): Figure {
  return {
    value,
    decimals: property(clause.property).decimals + 1,
    unit: storedUnit(clause.property),
  }
}
