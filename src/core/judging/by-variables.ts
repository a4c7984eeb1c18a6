/** Conformity by variables: mean of a control period, less or plus a factor times its standard deviation. */
import type { ClassLimit } from '../criteria/limits-for-class.ts'
import type { Quantity } from '../measure/units.ts'
import type { Result } from '../result/result.ts'
import { mean, standardDeviation } from '../statistics/descriptive.ts'
import { toleranceFactor } from '../statistics/tolerance-factor.ts'
import { judgeAgainstLimits } from './against-limits.ts'
import { type ClauseJudgement, withReason } from './judged-clause.ts'
import type { ComparisonCase } from './judging.ts'
import {
  noStatistic,
  resultsOfPeriod,
  type StatisticOf,
  statisticFigure,
  tooFew,
} from './series-of-results.ts'

/**
 * Judges the estimate of a characteristic value: mean less or plus a factor times the standard deviation.
 * @throws RangeError for a clause without a limit for the class
 * Source: EN 197-1, 9.2.2.2 (from memory), and EN 450-1 (structure read in EN 15167-1); the same formulas in
 * GOST 30515-2013, annex Ж, (Ж.3) and (Ж.4), read. The factor is computed.
 */
export function judgeByVariables(
  comparison: ComparisonCase,
  { days, atLeast, share, confidence }: StatisticOf<'variables'>,
  result: Result,
): ClauseJudgement {
  const { values, lots, bounded } = resultsOfPeriod(comparison, result, days)
  if (bounded) return noStatistic()
  const n = values.length
  if (n < Math.max(2, atLeast)) return tooFew(n, atLeast)
  const factor = toleranceFactor(n, share, confidence)
  const [centre, deviation] = [mean(values), standardDeviation(values)]
  const figures = {
    mean: statisticFigure(comparison, centre),
    standardDeviation: statisticFigure(comparison, deviation),
  }
  return {
    ...withReason(decisiveSide(comparison, centre, factor * deviation), {
      code: 'estimate-of',
      params: { n, ...figures, factor },
    }),
    against: { mean: centre, n, lots, values: values.slice(0, -1) },
  }
}

/** The first side that is not met, else the first: its estimate is the mean less or plus the margin. */
function decisiveSide(comparison: ComparisonCase, centre: number, margin: number): ClauseJudgement {
  const judged = comparison.limits.flatMap(sidesOf).map((side) => {
    // GOST 30515-2013, (Ж.3) and (Ж.4): x̄ ∓ k s.
    const value = side.operator === 'at-least' ? centre - margin : centre + margin
    return judgeAgainstLimits({ ...comparison, limits: [side] }, { value }, { key: null, asSpecified: true })
  })
  const decisive = judged.find(({ outcome }) => outcome !== 'meets') ?? judged[0]
  if (decisive === undefined)
    throw new RangeError(`judgeByVariables needs a limit, got none in clause ${comparison.clause.id}`)
  return decisive
}

/** A two-sided limit as two one-sided ones; an estimate on a strict limit meets it. */
function sidesOf({ operator, quantities }: ClassLimit): ClassLimit[] {
  switch (operator) {
    case 'between':
      return [
        { operator: 'at-least', quantities: quantities.slice(0, 1) },
        { operator: 'at-most', quantities: quantities.slice(1) },
      ]
    case 'magnitude-at-most':
      return [
        { operator: 'at-least', quantities: quantities.map(opposite) },
        { operator: 'at-most', quantities },
      ]
    case 'at-least':
    case 'above':
      return [{ operator: 'at-least', quantities }]
    case 'at-most':
    case 'below':
      return [{ operator: 'at-most', quantities }]
  }
}

function opposite(limit: Quantity): Quantity {
  return { ...limit, value: -limit.value, written: `−${limit.written}` }
}
