/** The share of results within the limits that a normal distribution with their mean and scatter gives. */
import type { Admitted } from '../criteria/decision-rule.ts'
import { statedLimit } from '../criteria/limits-for-class.ts'
import { storedUnit } from '../measure/properties.ts'
import type { Result } from '../result/result.ts'
import { mean, standardDeviation } from '../statistics/descriptive.ts'
import { cumulative } from '../statistics/distributions.ts'
import { deviationFrom } from './deviation.ts'
import { referenceOf } from './deviation-reference.ts'
import { type ClauseJudgement, judgement } from './judged-clause.ts'
import type { ComparisonCase } from './judging.ts'
import { storedUnitOf } from './limit-unit.ts'
import { admittedBy } from './limit-under-decision-rule.ts'
import { lastResults, noStatistic, type StatisticOf, tooFew } from './series-of-results.ts'

/** Decimals that the share, the mean and the standard deviation are stated with. */
const DECIMALS = 2

/**
 * Judges the share of results within the limits that a normal distribution with their mean and scatter gives.
 * Source: own estimate, with mean and standard deviation in the form of JCGM 106:2012, 7.2.6, equation (6);
 * the share asked for is data of the set.
 */
export function judgeShareWithin(
  comparison: ComparisonCase,
  { count, atLeast, share }: StatisticOf<'tolerance'>,
  result: Result,
): ClauseJudgement {
  const { values, bounded } = lastResults(comparison, result, count)
  if (bounded) return noStatistic()
  const n = values.length
  if (n < Math.max(2, atLeast)) return tooFew(n, atLeast)
  const judged = judgedValues(comparison, result, values)
  if ('outcome' in judged) return judged
  const [centre, deviation] = [mean(judged.values), standardDeviation(judged.values)]
  const within = comparison.limits.map((limit) => shareWithin(admittedBy(limit), centre, deviation))
  const [percent, leastPercent] = [100 * Math.min(...within), 100 * share]
  const figure = (value: number) => ({ value, decimals: DECIMALS, unit: unitJudged(comparison) })
  return {
    ...judgement(leastPercent <= percent ? 'meets' : 'does-not-meet', {
      code: 'share-within-limits',
      params: {
        percent,
        leastPercent,
        n,
        mean: figure(centre),
        standardDeviation: figure(deviation),
        limits: comparison.limits.map(statedLimit),
      },
    }),
    ...shareOutcome(percent, leastPercent, comparison.clause.layer),
  }
}

function shareOutcome(percent: number, leastPercent: number, layer: string): Partial<ClauseJudgement> {
  const limit = {
    operator: 'at-least' as const,
    values: [leastPercent],
    unit: '%',
    written: [`${leastPercent} %`],
    layer,
  }
  return { value: percent, compared: percent, unit: '%', decimals: DECIMALS, limit }
}

/** That of the limits: of a deviation not always the property's own. */
function unitJudged({ clause, limits: [limit] }: ComparisonCase): string {
  return limit === undefined ? storedUnit(clause.property) : storedUnitOf(limit)
}

/** Deviations from the reference where the clause is on them, the values themselves otherwise. */
function judgedValues(
  { clause, evidence }: ComparisonCase,
  result: Result,
  values: readonly number[],
): { readonly values: readonly number[] } | ClauseJudgement {
  if (clause.deviation === undefined) return { values }
  const reference = referenceOf(clause, result, evidence)
  if (reference.found === 'none') return judgement(reference.outcome, reference.reason)
  const measure = clause.deviation.relative ? 'relative' : 'points'
  const deviations = values
    .map((value) => deviationFrom(value, reference.value, measure))
    .filter((deviation) => deviation !== null)
  return deviations.length < values.length
    ? judgement('not-reported', { code: 'no-deviation-from-zero', params: {} })
    : { values: deviations }
}

function shareWithin({ low, high }: Admitted, centre: number, deviation: number): number {
  if (deviation === 0) return low <= centre && centre <= high ? 1 : 0
  // Own estimate: Φ((high − x̄)/s) − Φ((low − x̄)/s), in the form of JCGM 106:2012, 7.2.6, equation (6).
  return cumulative((high - centre) / deviation) - cumulative((low - centre) / deviation)
}
