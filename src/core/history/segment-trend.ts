/** How far the points of a segment are alike, whether they rise or fall, and where that leads. */
import { correlationOfNeighbours, effectiveNumber, lag1 } from '../statistics/autocorrelation.ts'
import { cumulative } from '../statistics/distributions.ts'
import { correlationProbability, type Line, lineThrough, slopeInterval } from '../statistics/least-squares.ts'
import { type Cluster, clustersOf, type ComparablePoint } from './comparable-points.ts'
import { LEAST_BASELINE, unfit } from './control-charts.ts'
import { LEVEL, notShown, type Shown } from './not-shown.ts'
import type { AgainstControl, Correlation, Projection, Slope } from './segment-figures.ts'
import type { SeriesLimit } from './source-history.ts'

/** Fewer neighbours tell nothing of their correlation: own choice. */
const LEAST_CORRELATED = 10
/** Fewer independent results draw no line: own choice. */
const LEAST_INDEPENDENT = 4
/** The newest points that a trend is sought in: own choice, some two and a half years of monthly lots. */
const TREND_POINTS = 30
/** A line goes on for half the span that it was fitted to, at most: common practice, no source. */
const AHEAD = 0.5

/** Correlation of neighbouring batches, and the independent results that all points are worth. */
export function correlationOf(points: readonly ComparablePoint[]): Shown<Correlation> {
  const clusters = clustersOf(points).map(({ value }) => value)
  const reason = unfit(points, LEAST_CORRELATED)
  if (reason !== undefined) return notShown(reason)
  if (clusters.length < LEAST_CORRELATED)
    return notShown({
      code: 'too-few-batches',
      params: { batches: clusters.length, needed: LEAST_CORRELATED },
    })
  const found = lag1(clusters)
  if (found === null) return notShown({ code: 'no-scatter', params: {} })
  const phi = correlationOfNeighbours(found, clusters.length)
  return {
    shown: true,
    lag1: found,
    n: points.length,
    effectiveN: effectiveNumber(clusters.length, phi),
    clusters: clusters.length,
  }
}

/**
 * The slope over the newest points, batches counted once.
 * Note: neighbouring residuals that are alike widen the interval.
 */
export function slopeOf(points: readonly ComparablePoint[]): Shown<Slope> {
  const newest = points.slice(-TREND_POINTS)
  const fitted = fittedTo(newest)
  if (!fitted.shown) return fitted
  const { line, phi } = fitted
  const effectiveN = (line.n * (1 - phi)) / (1 + phi)
  if (effectiveN < LEAST_INDEPENDENT)
    return notShown({
      code: 'too-few-independent',
      params: { n: newest.length, effectiveN, needed: LEAST_INDEPENDENT },
    })
  const { half, df } = slopeInterval(line, LEVEL, phi)
  const [low, high] = [10 * (line.slope - half), 10 * (line.slope + half)]
  return {
    shown: true,
    perTenLots: 10 * line.slope,
    interval: { low, high, level: LEVEL, df },
    n: newest.length,
    effectiveN,
    from: newest[0]?.place ?? 0,
    to: newest.at(-1)?.place ?? 0,
    since: newest[0]?.sampled ?? null,
    clear: 0 < low || high < 0,
  }
}

function fittedTo(newest: readonly ComparablePoint[]): Shown<{ readonly line: Line; readonly phi: number }> {
  const clusters = clustersOf(newest)
  const reason = unfit(newest, LEAST_BASELINE)
  if (reason !== undefined) return notShown(reason)
  if (clusters.length < LEAST_BASELINE)
    return notShown({
      code: 'too-few-batches',
      params: { batches: clusters.length, needed: LEAST_BASELINE },
    })
  // Equal values leave residuals of dust, and no line that rises or falls.
  if (clusters.every(({ value }) => value === clusters[0]?.value))
    return notShown({ code: 'no-scatter', params: {} })
  const line = lineThrough(
    clusters.map(({ place }) => place),
    clusters.map(({ value }) => value),
  )
  if (line.residualDeviation === 0) return notShown({ code: 'no-scatter', params: {} })
  return { shown: true, line, phi: correlationOfNeighbours(lag1(line.residuals) ?? 0, clusters.length, 2) }
}

/** Where the line meets the nearest limit, if it clearly rises or falls and does so soon. */
export function projectionOf(
  points: readonly ComparablePoint[],
  slope: Shown<Slope>,
  limits: readonly SeriesLimit[],
): Shown<Projection> {
  if (!slope.shown) return slope
  if (!slope.clear) return notShown({ code: 'no-trend', params: {} })
  if (limits.length === 0) return notShown({ code: 'no-limit', params: {} })
  const fitted = fittedTo(points.slice(-TREND_POINTS))
  if (!fitted.shown) return fitted
  const { line } = fitted
  const now = line.meanY + line.slope * (slope.to - line.meanX)
  const within = AHEAD * (slope.to - slope.from)
  const [nearest] = limits
    .flatMap((limit) => endsOf(limit).map(({ side, end }) => ({ limit, side, end })))
    .map((one) => ({ ...one, lotsAhead: (one.end - now) / line.slope }))
    .filter(({ side, lotsAhead }) => 0 < lotsAhead && (side === 'high' ? 0 < line.slope : line.slope < 0))
    .sort((a, b) => a.lotsAhead - b.lotsAhead)
  if (nearest === undefined || within < nearest.lotsAhead)
    return notShown({ code: 'limit-not-reached', params: { withinLots: Math.floor(within) } })
  const { limit, side, end, lotsAhead } = nearest
  const { criterion, clause } = limit
  return { shown: true, limit: { criterion, clause }, side, end, lotsAhead }
}

/**
 * The ends of a limit that is there.
 * @param low,high as of `SeriesLimit`
 */
export function endsOf({
  low,
  high,
}: Pick<SeriesLimit, 'low' | 'high'>): { side: 'low' | 'high'; end: number }[] {
  return [
    ...(low === null ? [] : [{ side: 'low' as const, end: low }]),
    ...(high === null ? [] : [{ side: 'high' as const, end: high }]),
  ]
}

/**
 * Whether an index rises where its control falls: batches with the mean of their indices.
 * Note: an index is a quotient by its control, so that chance in the control alone makes such a correlation.
 */
export function againstControl(points: readonly ComparablePoint[]): Shown<AgainstControl> {
  const clusters = clustersOf(points).filter(
    (cluster): cluster is Cluster & { controlValue: number } => cluster.controlValue !== undefined,
  )
  if (points.every(({ controlValue }) => controlValue === undefined))
    return notShown({ code: 'no-control', params: {} })
  const reason = unfit(points, LEAST_BASELINE)
  if (reason !== undefined) return notShown(reason)
  const batches = clusters.length
  if (batches < LEAST_BASELINE)
    return notShown({ code: 'too-few-batches', params: { batches, needed: LEAST_BASELINE } })
  const levels = clusters.map(({ controlValue }) => controlValue)
  if (new Set(levels).size < 2) return notShown({ code: 'no-scatter', params: {} })
  const { r } = lineThrough(
    levels,
    clusters.map(({ value }) => value),
  )
  if (r === null) return notShown({ code: 'no-scatter', params: {} })
  return { shown: true, r, p: correlationProbability(r, batches, cumulative), batches }
}
