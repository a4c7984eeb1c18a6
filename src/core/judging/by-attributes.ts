/** Conformity by attributes: how many results of a control period may lie beyond the limit. */
import { statedLimit } from '../criteria/limits-for-class.ts'
import type { Result } from '../result/result.ts'
import { mean } from '../statistics/descriptive.ts'
import { compareWithLimit } from './compare-with-limit.ts'
import { type ClauseJudgement, judgement } from './judged-clause.ts'
import type { ComparisonCase } from './judging.ts'
import { resultsOfPeriod, type StatisticOf, tooFew } from './series-of-results.ts'

export function judgeByAttributes(
  comparison: ComparisonCase,
  statistic: StatisticOf<'attributes'>,
  result: Result,
): ClauseJudgement {
  const { values, lots } = resultsOfPeriod(comparison, result, statistic.days)
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
    against: { mean: mean(values), n, lots },
  }
}

function isBeyond(value: number, { clause, limits }: ComparisonCase): boolean {
  return limits.some(
    ({ operator, quantities }) =>
      compareWithLimit({ value }, operator, quantities, clause.resolution).answer !== 'met',
  )
}

/** How many results may lie beyond the limit; null for fewer results than the plan begins with. */
export function acceptanceNumber(
  n: number,
  { acceptance, beyond }: Pick<StatisticOf<'attributes'>, 'acceptance' | 'beyond'>,
): number | null {
  const entry = acceptance.findLast(({ from }) => from <= n)
  if (entry === undefined) return null
  return beyond !== undefined && entry === acceptance.at(-1)
    ? Math.max(entry.allow, Math.floor(beyond.factor * (n - beyond.less)))
    : entry.allow
}
