/** Charts of a laboratory's control batches: a point is a batch. */
import { kept } from '../measure/kept.ts'
import type { Moment } from '../measure/moment.ts'
import { CHART_RULES } from '../statistics/chart-signals.ts'
import { CUSUM_DECISION, CUSUM_REFERENCE, cusum } from '../statistics/cusum.ts'
import { mean } from '../statistics/descriptive.ts'
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
import type { ControlBatchSeries, ControlPoint, ControlSegment } from './laboratory-history.ts'
import type { Shown } from './not-shown.ts'
import type { CusumChart, IndividualsChart } from './segment-figures.ts'
import { correlationOf, slopeOf } from './segment-trend.ts'

/** A control batch with what was measured on it. */
export interface MeasuredBatch {
  readonly id: string
  readonly laboratory: string
  readonly cast: Moment
  readonly cement: string
  readonly results: readonly Result[]
}

/** As many as a uniformity clause looks back: own choice. */
const LOOK_BACK = 10
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
    .flatMap(([key, measured]) => seriesOf(key, measured, bridges))
}

interface Measured {
  readonly batch: MeasuredBatch
  readonly result: Result
}

function seriesOf(
  key: string,
  measured: readonly Measured[],
  bridges: readonly Bridge[],
): ControlBatchSeries[] {
  const { property, condition, age, unit, decimals } = measured[0]?.result ?? {}
  if (property === undefined || condition === undefined || age === undefined) return []
  const comparable = measured.flatMap((one, place) => comparablePoint(one, place))
  const groups = comparableGroups(comparable, [], bridges)
  const earlier = fromEarlier(groups)
  return [
    {
      key,
      property,
      condition,
      age,
      unit: unit ?? '',
      decimals: decimals ?? 0,
      points: measured.map((one, place) => pointOf(one, place, earlier.get(place))),
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

function pointOf({ batch, result }: Measured, place: number, earlier: Earlier | undefined): ControlPoint {
  const { id, cast, cement } = batch
  const { value, valid, reasons } = result
  return {
    place,
    value,
    status: valid ? 'valid' : 'not-valid',
    named: { batch: id, cast, cement, reasons },
    fromEarlierPercent: earlier?.percent ?? null,
    fromEarlierDeviations: earlier?.deviations ?? null,
  }
}

/** What a batch is held against. */
interface Earlier {
  readonly percent: number
  readonly deviations: number | null
}

/** Fewer degrees of freedom give no scatter to hold a batch against: own choice. */
const LEAST_DF = 10

/** How far each batch lies from those before it, by place; none for the first of a segment. */
function fromEarlier(groups: readonly ComparableGroup[]): Map<number, Earlier> {
  const scatter = { squares: 0, df: 0 }
  const found = new Map<number, Earlier>()
  const inOrder = groups
    .flatMap(({ points }) => {
      const group = { n: 0, mean: 0 }
      return points.map((point, at) => ({
        point,
        group,
        recent: points.slice(Math.max(0, at - LOOK_BACK), at),
      }))
    })
    .sort((a, b) => a.point.place - b.point.place)
  for (const { point, group, recent } of inOrder) {
    if (0 < recent.length) found.set(point.place, standing(point.value, recent, scatter))
    add(scatter, group, point.value)
  }
  return found
}

function standing(
  value: number,
  recent: readonly ComparablePoint[],
  { squares, df }: { readonly squares: number; readonly df: number },
): Earlier {
  const centre = mean(recent.map((one) => one.value))
  const spread = df < LEAST_DF ? 0 : Math.sqrt((squares / df) * (1 + 1 / recent.length))
  const difference = value - centre
  return { percent: (100 * difference) / centre, deviations: spread === 0 ? null : difference / spread }
}

/** Welford 1962, Technometrics 4, 419-420: the squares about a mean grow by n/(n + 1) of the squared distance from it. */
function add(
  scatter: { squares: number; df: number },
  group: { n: number; mean: number },
  value: number,
): void {
  const distance = value - group.mean
  if (0 < group.n) {
    scatter.squares += (distance ** 2 * group.n) / (group.n + 1)
    scatter.df += 1
  }
  group.n += 1
  group.mean += distance / group.n
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
