/** A trend over sampling as plain values: paths, marks and labels, ready to be written as SVG. */
import { area, line } from 'd3'
import { placeLabels, type PlacedLabel } from './labels.ts'
import {
  LEFT,
  RIGHT,
  rounded,
  type TimeScale,
  timeScale,
  timeTicks,
  utcDate,
  type ValueScale,
  valueScale,
  valueTicks,
} from './trend-axes.ts'

export interface TrendPoint {
  readonly lot: string
  /** Date, or date and time, of sampling or casting. */
  readonly at: string
  readonly value: number | null
  readonly status: 'valid' | 'not-valid' | 'pending' | 'withdrawn'
  readonly note?: string
  /** Mean of the preceding results. */
  readonly mean?: number
}
export interface TrendLimit {
  readonly value: number
  readonly label: string
  /** Names of the sets that set it, for the legend. */
  readonly sets?: readonly string[]
}
export interface TrendEvent {
  readonly from: string
  readonly to?: string
  readonly title: string
}

export interface TrendBand {
  readonly half: number
  readonly relative: boolean
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
  readonly plot: {
    readonly left: number
    readonly right: number
    readonly top: number
    readonly bottom: number
  }
  readonly logarithmic: boolean
  /** One path for each run of valid neighbours. */
  readonly lines: readonly string[]
  readonly mean: string
  readonly band: string
  readonly marks: readonly TrendMark[]
  /**
   * All valid results as one path of points: thousands of elements of their own would make the page heavy.
   */
  readonly dots: string
  readonly limits: readonly { readonly y: number; readonly label: string; readonly labelY: number }[]
  readonly events: readonly { readonly x: number; readonly width: number; readonly label: PlacedLabel }[]
  readonly xTicks: readonly { readonly x: number; readonly label: string }[]
  readonly yTicks: readonly { readonly y: number; readonly value: number }[]
}

const BOTTOM = 26
const LABEL_ROW = 15
const SHAPES: Readonly<Record<TrendPoint['status'], MarkShape>> = {
  valid: 'circle',
  'not-valid': 'diamond',
  pending: 'ring',
  withdrawn: 'cross',
}

/** The model of a trend; null where no point has a value. */
export function trendModel(input: TrendInput): TrendModel | null {
  const { points, width } = input
  const values = points.flatMap((point) => (point.value === null ? [] : [point.value]))
  if (values.length === 0) return null
  const x = timeScale(
    points.map((point) => point.at),
    width,
  )
  const events = eventBands(input, x)
  const top = 8 + LABEL_ROW * rows(events)
  const height = input.height + LABEL_ROW * rows(events)
  const { y, logarithmic } = valueScale(
    [...values, ...input.limits.map((limit) => limit.value), ...bandEdges(input)],
    [height - BOTTOM, top],
    input.axis ?? 'by-spread',
  )
  const at = (point: TrendPoint) => rounded(x(utcDate(point.at)))
  const marks = points.map(
    (point): TrendMark => ({
      x: at(point),
      y: point.value === null ? height - BOTTOM - 5 : rounded(y(point.value)),
      shape: SHAPES[point.status],
      point,
    }),
  )
  return {
    width,
    height,
    plot: { left: LEFT, right: width - RIGHT, top, bottom: height - BOTTOM },
    logarithmic,
    lines: validRuns(points).map(
      (run) => line<TrendPoint>(at, (point) => rounded(y(point.value ?? 0))).digits(2)(run) ?? '',
    ),
    ...meanPaths(input, at, y),
    marks,
    dots: marks.flatMap((mark) => (mark.shape === 'circle' ? [`M${mark.x},${mark.y}h0`] : [])).join(''),
    limits: limitLines(input.limits, y, top),
    events,
    xTicks: timeTicks(x, width),
    yTicks: valueTicks(y, logarithmic, input.decimals),
  }
}

/** The line of valid results is broken by a point that is not. */
function validRuns(points: readonly TrendPoint[]): TrendPoint[][] {
  const runs: TrendPoint[][] = [[]]
  for (const point of points) {
    if (point.status === 'valid' && point.value !== null) runs.at(-1)?.push(point)
    else if (point.status !== 'pending' && (runs.at(-1)?.length ?? 0) > 0) runs.push([])
  }
  return runs.filter((run) => 0 < run.length)
}

/** One edge of the band around a mean; the mean itself without a band. */
function bandEdge(mean: number, sign: 1 | -1, band: TrendBand | undefined): number {
  if (band === undefined) return mean
  return mean + sign * (band.relative ? (Math.abs(mean) * band.half) / 100 : band.half)
}

/** The axis takes the band in, so that it is never drawn over the edge of the plot. */
function bandEdges({ points, band }: TrendInput): number[] {
  return points.flatMap(({ mean }) =>
    mean === undefined ? [] : [bandEdge(mean, -1, band), bandEdge(mean, 1, band)],
  )
}

function meanPaths(
  { points, band }: TrendInput,
  at: (point: TrendPoint) => number,
  y: ValueScale,
): { mean: string; band: string } {
  const withMean = points.filter((point) => point.mean !== undefined)
  const edge = (sign: 1 | -1) => (point: TrendPoint) => rounded(y(bandEdge(point.mean ?? 0, sign, band)))
  return {
    mean: line<TrendPoint>(at, (point) => rounded(y(point.mean ?? 0))).digits(2)(withMean) ?? '',
    band: band === undefined ? '' : (area<TrendPoint>(at, edge(-1), edge(1)).digits(2)(withMean) ?? ''),
  }
}

function limitLines(limits: readonly TrendLimit[], y: ValueScale, top: number): TrendModel['limits'] {
  const placed: { y: number; label: string; labelY: number }[] = []
  for (const limit of [...limits].sort((a, b) => b.value - a.value)) {
    const height = rounded(y(limit.value))
    const above = placed.at(-1)?.labelY ?? Number.NEGATIVE_INFINITY
    placed.push({ y: height, label: limit.label, labelY: Math.max(height - 5, above + 13, top + 10) })
  }
  return placed
}

/** Width that a letter of an event's label needs, about, in a 12 px face. */
const LETTER = 6.2

function eventBands({ events, width }: TrendInput, x: TimeScale): TrendModel['events'] {
  const bounds = { left: LEFT, right: width - RIGHT }
  const bands = events
    .map((event) => {
      const from = rounded(x(utcDate(event.from)))
      const to = rounded(x(utcDate(event.to ?? event.from)))
      return {
        title: shortened(event.title, bounds.right - bounds.left),
        x: Math.max(bounds.left, from),
        end: Math.min(bounds.right, Math.max(to, from + 1.5)),
      }
    })
    .filter((band) => band.x < bounds.right && bounds.left < band.end)
  const labels = placeLabels(
    bands.map((band) => ({
      text: band.title,
      x: (band.x + band.end) / 2,
      width: band.title.length * LETTER,
    })),
    bounds,
  )
  return bands.map((band, index) => ({
    x: band.x,
    width: rounded(band.end - band.x),
    label: labels[index] as PlacedLabel,
  }))
}

/** A label wider than the plot is cut; the page tells the whole title elsewhere. */
function shortened(title: string, room: number): string {
  const letters = Math.floor(room / LETTER)
  return title.length <= letters ? title : `${title.slice(0, letters - 1).trimEnd()}…`
}

function rows(events: TrendModel['events']): number {
  return events.length === 0 ? 0 : 1 + Math.max(...events.map((event) => event.label.row))
}
