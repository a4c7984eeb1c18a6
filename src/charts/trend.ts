/** A trend over sampling as plain values: paths, marks and labels, ready to be written as SVG. */
import type { Moment } from '../core/measure/moment.ts'
import { line } from 'd3'
import { rowsOf } from './labels.ts'
import { LEFT, type Plot, RIGHT, rounded } from './plot.ts'
import { dotsPath, type Joint, type PointStatus, runs } from './points.ts'
import {
  type TimeTick,
  timeScale,
  timeTicks,
  utcDate,
  type ValueTick,
  valueScale,
  valueTicks,
} from './trend-axes.ts'
import {
  type EventBand,
  eventBands,
  type LimitLine,
  limitLines,
  type TrendEvent,
  type TrendLimit,
} from './trend-labels.ts'
import { bandEdges, meanPaths, type TrendBand } from './trend-mean.ts'

export interface TrendPoint {
  readonly lot: string
  /** Sampling or casting. */
  readonly at: Moment
  readonly value: number | null
  readonly status: PointStatus
  readonly note?: string
  /** Mean of the preceding results. */
  readonly mean?: number
}

export interface TrendInput {
  readonly points: readonly TrendPoint[]
  readonly limits: readonly TrendLimit[]
  /** Half width of the band around the mean: in the value's unit, or in per cent of the mean. */
  readonly band?: TrendBand
  readonly events: readonly TrendEvent[]
  readonly decimals: number
  /**
   * `linear` for a share of the mass; an index or a resistivity may spread over decades and takes a
   * logarithmic axis then.
   */
  readonly axis?: 'linear' | 'by-spread'
  readonly width: number
  /** Without the rows of event labels, which are added above. */
  readonly height: number
}

export type MarkShape = 'circle' | 'diamond' | 'ring' | 'cross'
export interface TrendMark {
  readonly x: number
  readonly y: number
  readonly shape: MarkShape
  readonly point: TrendPoint
}

export interface TrendModel {
  readonly width: number
  readonly height: number
  readonly plot: Plot
  readonly logarithmic: boolean
  /** One path for each run of valid neighbours. */
  readonly lines: readonly string[]
  readonly mean: string
  readonly band: string
  readonly marks: readonly TrendMark[]
  /** All valid results as one path. */
  readonly dots: string
  readonly limits: readonly LimitLine[]
  readonly events: readonly EventBand[]
  readonly xTicks: readonly TimeTick[]
  readonly yTicks: readonly ValueTick[]
}

const TOP = 8
const BOTTOM = 26
const LABEL_ROW = 15
/** A mark without a value stands this far above the lower edge. */
const FLOAT = 5
const SHAPES: Readonly<Record<PointStatus, MarkShape>> = {
  valid: 'circle',
  'not-valid': 'diamond',
  pending: 'ring',
  withdrawn: 'cross',
}

/** The model of a trend; null where no point has a value. */
export function trendModel(input: TrendInput): TrendModel | null {
  const { points, limits, band, width } = input
  const values = points.map((point) => point.value).filter((value) => value !== null)
  if (values.length === 0) return null
  const dates = points.map((point) => point.at)
  const time = timeScale(dates, width)
  const events = eventBands(input.events, time, width)
  const head = LABEL_ROW * rowsOf(events.map((event) => event.label))
  const height = input.height + head
  const plot: Plot = { left: LEFT, right: width - RIGHT, top: TOP + head, bottom: height - BOTTOM }
  const { y, logarithmic } = valueScale(
    [...values, ...limits.map((limit) => limit.value), ...bandEdges(points, band)],
    [plot.bottom, plot.top],
    input.axis ?? 'by-spread',
  )
  const across = (point: TrendPoint) => rounded(time(utcDate(point.at)))
  const upwards = ({ value }: TrendPoint) => (value === null ? plot.bottom - FLOAT : rounded(y(value)))
  const joined = line<TrendPoint>(across, upwards).digits(2)
  const marks = points.map(
    (point): TrendMark => ({ x: across(point), y: upwards(point), shape: SHAPES[point.status], point }),
  )
  return {
    width,
    height,
    plot,
    logarithmic,
    lines: runs(points, jointOf).map((run) => joined(run) ?? ''),
    ...meanPaths(points, { x: across, y, band }),
    marks,
    dots: dotsPath(marks.filter((mark) => mark.shape === 'circle')),
    limits: limitLines(limits, y, plot.top),
    events,
    xTicks: timeTicks(time, width),
    yTicks: valueTicks(y, logarithmic, input.decimals),
  }
}

/** The line of valid results goes past what is still to come, and is broken by a point that is not valid. */
function jointOf({ status, value }: TrendPoint): Joint {
  if (status === 'valid' && value !== null) return 'joined'
  return status === 'pending' ? 'passed-over' : 'break'
}
