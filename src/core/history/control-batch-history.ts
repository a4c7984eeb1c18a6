/** Charts of a laboratory's control batches: a point is a batch. */
import { kept } from '../measure/kept.ts'
import type { Moment } from '../measure/moment.ts'
import { CHART_RULES } from '../statistics/chart-signals.ts'
import { CUSUM_DECISION, CUSUM_REFERENCE, cusum } from '../statistics/cusum.ts'
import { movingAverages } from '../statistics/moving-average.ts'
import type { Result } from '../result/result.ts'
import { isBounded } from '../result/bounds.ts'
import {
  type Bridge,
  type ComparableGroup,
  comparableGroups,
  type ComparablePoint,
} from './comparable-points.ts'
import { controlCharts } from './control-charts.ts'
import { type ControlStanding, controlStandings, type StandingBatch } from './control-standing.ts'
import type { ControlBatchSeries, ControlPoint, ControlSegment } from './laboratory-history.ts'
import type { Shown } from './not-shown.ts'
import type { CusumChart, IndividualsChart } from './segment-figures.ts'
import { correlationOf, slopeOf } from './segment-trend.ts'

/** A control batch with what was measured on it. */
export interface MeasuredBatch extends StandingBatch {
  readonly cast: Moment
}

/** Results that a moving average takes in, as of a source. */
const MOVING = 5

/**
 * One series for each property, condition and age.
 * @param batches of one laboratory, in order of casting
 * @param bridges of it
 * @returns in order of property, condition and age
 */
export function controlBatchSeries(
  batches: readonly MeasuredBatch[],
  bridges: readonly Bridge[],
): ControlBatchSeries[] {
  const standings = controlStandings(batches)
  const found = new Map<string, Measured[]>()
  for (const batch of batches)
    for (const result of batch.results) {
      const { property, condition, age } = result
      if (condition === undefined || age === undefined) continue
      const key = [property, condition, String(age.hours).padStart(8, '0')].join('|')
      kept(found, key, (): Measured[] => []).push({ batch, result })
    }
  return [...found]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .flatMap(([key, measured]) => seriesOf(key, measured, { bridges, standings }))
}

interface Measured {
  readonly batch: MeasuredBatch
  readonly result: Result
}

/** What all series of a laboratory are seen beside. */
interface Beside {
  readonly bridges: readonly Bridge[]
  readonly standings: ReadonlyMap<string, readonly ControlStanding[]>
}

function seriesOf(
  key: string,
  measured: readonly Measured[],
  { bridges, standings }: Beside,
): ControlBatchSeries[] {
  const { property, condition, age, unit, decimals } = measured[0]?.result ?? {}
  if (property === undefined || condition === undefined || age === undefined) return []
  const comparable = measured.flatMap((one, place) => comparablePoint(one, place))
  const groups = comparableGroups(comparable, [], bridges)
  return [
    {
      key,
      property,
      condition,
      age,
      unit: unit ?? '',
      decimals: decimals ?? 0,
      points: measured.map((one, place) => pointOf(one, place, standings)),
      segments: groups.map(segmentOfBatches),
    },
  ]
}

function comparablePoint({ batch, result }: Measured, place: number): ComparablePoint[] {
  if (!result.valid) return []
  const { id, laboratory, cement, cast } = batch
  const { value } = result
  return [{ place, value, bounded: isBounded(result), sampled: cast, laboratory, cement, cluster: id }]
}

function pointOf({ batch, result }: Measured, place: number, standings: Beside['standings']): ControlPoint {
  const { id, cast, cement } = batch
  const { value, valid, reasons } = result
  const standing = standings.get(id)?.find((one) => one.result === result)
  return {
    place,
    value,
    status: valid ? 'valid' : 'not-valid',
    named: { batch: id, cast, cement, reasons },
    fromEarlierPercent: standing?.percent ?? null,
    fromEarlierDeviations: standing?.scatter?.deviations ?? null,
  }
}

function segmentOfBatches({ points, begins }: ComparableGroup): ControlSegment {
  const { chart, ewma } = controlCharts(points, [], CHART_RULES)
  return {
    places: points.map(({ place }) => place),
    cements: [...new Set(points.flatMap(({ cement }) => cement ?? []))],
    begins: begins === 'first' ? 'first' : 'control-cement',
    chart,
    ewma,
    cusum: sumsOf(points, chart),
    movingAverage: movingAverages(
      points.map(({ value }) => value),
      MOVING,
    ).map(({ at, value }) => ({ place: points[at]?.place ?? at, value })),
    correlation: correlationOf(points),
    slope: slopeOf(points),
  }
}

function sumsOf(points: readonly ComparablePoint[], chart: Shown<IndividualsChart>): Shown<CusumChart> {
  if (!chart.shown) return chart
  const sums = cusum(points.map(({ value }) => (value - chart.centre) / chart.sigma))
  return {
    shown: true,
    reference: CUSUM_REFERENCE,
    decision: CUSUM_DECISION,
    points: sums.map((one, at) => ({ place: points[at]?.place ?? at, ...one })),
  }
}
