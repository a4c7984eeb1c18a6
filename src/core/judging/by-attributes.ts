/** Conformity by attributes: how many results of a control period may lie beyond the limit. */
import { statedLimit } from '../criteria/limits-for-class.ts'
import type { Result } from '../result/result.ts'
import { mean } from '../statistics/descriptive.ts'
import { compareWithLimit } from './compare-with-limit.ts'
import { type ClauseJudgement, judgement } from './judged-clause.ts'
import type { ComparisonCase } from './judging.ts'
import { noStatistic, resultsOfPeriod, type StatisticOf, tooFew } from './series-of-results.ts'

/**
 * Judges the number of results of the control period that lie beyond the limit.
 * Source: EN 197-1, conformity by attributes (from memory); EN 413-1, table 8, prints the same plan (read).
 */
export function judgeByAttributes(
  comparison: ComparisonCase,
  statistic: StatisticOf<'attributes'>,
  result: Result,
): ClauseJudgement {
  const { values, lots, bounded } = resultsOfPeriod(comparison, result, statistic.days)
  if (bounded) return noStatistic()
  const n = values.length
  const allowed = acceptanceNumber(n, statistic)
  if (allowed === null) return tooFew(n, statistic.acceptance[0]?.from ?? 1)
  const beyond = values.filter((value) => isBeyond(value, comparison)).length
  const limits = comparison.limits.map(statedLimit)
  return {
    ...judgement(beyond <= allowed ? 'meets' : 'does-not-meet', {
      code: 'results-beyond-limit',
      params: { beyond, n, allowed, limits },
    }),
    value: beyond,
    compared: beyond,
    unit: '',
    decimals: 0,
    limit: {
      operator: 'at-most',
      values: [allowed],
      unit: '',
      written: [String(allowed)],
      layer: comparison.clause.layer,
    },
    against: { mean: mean(values), n, lots, values: values.slice(0, -1) },
  }
}

function isBeyond(value: number, { clause, limits }: ComparisonCase): boolean {
  return limits.some(
    ({ operator, quantities }) =>
      compareWithLimit({ value }, operator, quantities, clause.resolution).answer !== 'met',
  )
}

/**
 * How many results may lie beyond the limit.
 * @param n results of the control period
 * @returns a whole number; null for fewer results than the plan begins with
 * Source: the plan is data of the set; EN 413-1, table 8 (read, 20 to 136 results), has the numbers of EN
 * 197-1 (from memory).
 */
export function acceptanceNumber(
  n: number,
  { acceptance, beyond }: Pick<StatisticOf<'attributes'>, 'acceptance' | 'beyond'>,
): number | null {
  const entry = acceptance.findLast(({ from }) => from <= n)
  if (entry === undefined) return null
  // EN 413-1, table 8, agrees with floor(0.075 (n − 30)), which EN 197-1 has beyond its table (from memory).
  return beyond !== undefined && entry === acceptance.at(-1)
    ? Math.max(entry.allow, Math.floor(beyond.factor * (n - beyond.less)))
    : entry.allow
}
