/** How far the points of a segment stand from each limit, in what scatter, and the share inside. */
import { correlationOfNeighbours, effectiveNumber, lag1 } from '../statistics/autocorrelation.ts'
import { capabilityHalfWidth, capabilityIndex, percentWithin } from '../statistics/capability.ts'
import { mean, standardDeviation } from '../statistics/descriptive.ts'
import { individualsLimits } from '../statistics/individuals-chart.ts'
import { testingError, withoutTesting } from '../statistics/testing-error.ts'
import { clustersOf, type ComparablePoint } from './comparable-points.ts'
import { LEAST_BASELINE, unfit } from './control-charts.ts'
import { insideOf, type LimitEnd } from './limit-end.ts'
import { nearGrowth } from './near-growth.ts'
import { LEVEL, type NotShown, notShown, type Shown } from './not-shown.ts'
import type {
  Capability,
  Correlation,
  IndividualsChart,
  Margin,
  RunRule,
  Scatter,
  WithinSource,
} from './segment-figures.ts'
import { endsOf } from './segment-trend.ts'
import type { SeriesLimit } from './source-history.ts'

/** Fewer independent results estimate no share: own choice. */
const LEAST_INDEPENDENT = 3
/** Fewer results have no scatter worth printing: own choice. */
export const LEAST_SCATTER = 5

/** Scatter of all points, overall and by the moving range, and without the error of testing. */
export function scatterOf(points: readonly ComparablePoint[]): Shown<Scatter> {
  const reason = unfit(points, LEAST_SCATTER)
  if (reason !== undefined) return notShown(reason)
  const values = points.map(({ value }) => value)
  const overall = standardDeviation(values)
  return {
    shown: true,
    n: values.length,
    mean: mean(values),
    standardDeviation: overall,
    movingRangeSigma: individualsLimits(values).sigma,
    withinSource: withinSource(points, overall),
  }
}

/** One pair has one degree of freedom, and leaves the error open from under half to thirty times what it shows. */
const LEAST_PAIRS = 2

/** Duplicates before what the laboratory states of itself, the latest of which counts. */
function withinSource(points: readonly ComparablePoint[], overall: number): Shown<WithinSource> {
  const differences = points.flatMap(({ duplicates }) => duplicates ?? [])
  const stated = points.findLast((point) => point.stated !== undefined)?.stated
  const fromPairs = LEAST_PAIRS <= differences.length
  const testing = fromPairs ? testingError(differences) : stated
  if (testing === undefined)
    return notShown(
      differences.length === 0
        ? { code: 'no-testing-error', params: {} }
        : { code: 'single-duplicate', params: {} },
    )
  return {
    shown: true,
    testing,
    corrected: withoutTesting(overall, testing),
    from: fromPairs ? 'duplicates' : 'stated-repeatability',
    pairs: fromPairs ? differences.length : 0,
  }
}

/** What withholds a share of results inside: it speaks of a source in control of which nothing is left out. */
export interface Withholding {
  readonly chart: Shown<IndividualsChart>
  readonly correlation: Shown<Correlation>
  /** Diversions without a result of the property while the points were taken. */
  readonly divertedWithoutResults: number
}

/** One entry for each end of each limit. */
export function marginsOf(
  points: readonly ComparablePoint[],
  limits: readonly SeriesLimit[],
  withholding: Withholding,
): Margin[] {
  return limits.flatMap((limit) =>
    endsOf(limit).map((end) => marginOf(points, limit, end, capabilityFor(points, end, withholding))),
  )
}

function marginOf(
  points: readonly ComparablePoint[],
  { criterion, clause }: SeriesLimit,
  end: LimitEnd,
  capability: Shown<Capability>,
): Margin {
  const margins = points.map(({ place, value }) => ({ place, margin: insideOf(end, value) }))
  const smallest = margins.reduce((least, one) => (one.margin < least.margin ? one : least))
  const values = points.map(({ value }) => value)
  const deviation = values.length < LEAST_SCATTER ? 0 : standardDeviation(values)
  return {
    limit: { criterion, clause },
    ...end,
    last: margins.at(-1) ?? smallest,
    smallest,
    mean: insideOf(end, mean(values)),
    inDeviations: deviation === 0 ? null : insideOf(end, mean(values)) / deviation,
    near: deviation === 0 ? 0 : margins.filter(({ margin }) => Math.abs(margin) <= deviation).length,
    n: points.length,
    growth: nearGrowth(points, end, deviation),
    capability,
  }
}

function capabilityFor(
  points: readonly ComparablePoint[],
  end: LimitEnd,
  withholding: Withholding,
): Shown<Capability> {
  const reason = unfit(points, LEAST_BASELINE) ?? withheldBy(withholding)
  if (reason !== undefined) return notShown(reason)
  const values = points.map(({ value }) => value)
  const deviation = standardDeviation(values)
  if (deviation === 0) return notShown({ code: 'no-scatter', params: {} })
  const batches = clustersOf(points).map(({ value }) => value)
  if (batches.length < LEAST_SCATTER)
    return notShown({ code: 'too-few-batches', params: { batches: batches.length, needed: LEAST_SCATTER } })
  const effectiveN = independentOf(batches, withholding.correlation)
  if (effectiveN < LEAST_INDEPENDENT)
    return notShown({
      code: 'too-few-independent',
      params: { n: points.length, effectiveN, needed: LEAST_INDEPENDENT },
    })
  const distance = insideOf(end, mean(values))
  // By the number of results: fewer would move the estimate to the ends, where correlation does not.
  const share = percentWithin(distance / deviation, values.length)
  const outside = values.filter((value) => insideOf(end, value) < 0).length
  const n = points.length
  if (chanceOfSoMany(outside, n * (1 - share / 100)) < SELDOM)
    return notShown({ code: 'not-as-estimated', params: { outside, n, percentWithin: share } })
  return capabilityOf(distance, deviation, { share, n, effectiveN })
}

/** Eight batches or nine tell little of their correlation, and more than taking it as none. */
function independentOf(batches: readonly number[], correlation: Shown<Correlation>): number {
  if (correlation.shown) return correlation.effectiveN
  return effectiveNumber(batches.length, correlationOfNeighbours(lag1(batches) ?? 0, batches.length))
}

function capabilityOf(
  distance: number,
  deviation: number,
  { share, n, effectiveN }: { readonly share: number; readonly n: number; readonly effectiveN: number },
): Shown<Capability> {
  const index = capabilityIndex(distance, deviation)
  const half = capabilityHalfWidth(index, effectiveN, LEVEL)
  return {
    shown: true,
    index,
    interval: { low: index - half, high: index + half, level: LEVEL, df: effectiveN - 1 },
    percentWithin: share,
    estimator: 'unbiased-beta',
    n,
    effectiveN,
  }
}

function withheldBy({ chart, divertedWithoutResults }: Withholding): NotShown | undefined {
  if (0 < divertedWithoutResults)
    return { code: 'diverted-without-results', params: { entries: divertedWithoutResults } }
  if (!chart.shown) return chart.reason
  const signals = beyondChance(chart)
  return signals === 0 ? undefined : { code: 'out-of-control', params: { signals } }
}

/** Rules that say of a source that it did not stay where it was. */
const CONTROL_RULES: readonly RunRule[] = ['beyond-limits', 'run-of-eight', 'ewma']
/** Signals of the rules that hold at more points than chance explains; 0 where it explains them all. */
function beyondChance({ signals, held }: IndividualsChart): number {
  const rules = held.filter(({ rule, tooMany }) => tooMany && CONTROL_RULES.includes(rule))
  return signals.filter((signal) => rules.some(({ rule }) => rule === signal.rule)).length
}

/** As seldom chance would put as many results beyond a limit: own choice. */
const SELDOM = 0.05

/** Of a Poisson number with that mean. */
function chanceOfSoMany(seen: number, expected: number): number {
  let [term, below] = [Math.exp(-expected), 0]
  for (let k = 0; k < seen; k += 1) {
    below += term
    term *= expected / (k + 1)
  }
  return 1 - below
}
