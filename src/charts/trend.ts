/** A trend over sampling as plain values: paths, marks and labels, ready to be written as SVG. */
import { area, line, scaleLinear, scaleLog, scaleUtc, utcFormat } from 'd3'
import { placeLabels, type PlacedLabel } from './labels.ts'

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
export interface TrendLimit { readonly value: number; readonly label: string }
export interface TrendEvent { readonly from: string; readonly to?: string; readonly title: string }

export interface TrendInput {
  readonly points: readonly TrendPoint[]
  readonly limits: readonly TrendLimit[]
  /** Half width of the band around the mean: in the value's unit, or in per cent of the mean. */
  readonly band?: { readonly half: number; readonly relative: boolean }
  readonly events: readonly TrendEvent[]
  readonly decimals: number
  readonly width: number
  readonly height: number
}

export type MarkShape = 'circle' | 'diamond' | 'ring' | 'cross'
export interface TrendMark { readonly x: number; readonly y: number; readonly shape: MarkShape; readonly point: TrendPoint }

export interface TrendModel {
  readonly width: number
  readonly height: number
  readonly plot: { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number }
  readonly logarithmic: boolean
  /** One path for each run of valid neighbours. */
  readonly lines: readonly string[]
  readonly mean: string
  readonly band: string
  readonly marks: readonly TrendMark[]
  readonly limits: readonly { readonly y: number; readonly label: string; readonly labelY: number }[]
  readonly events: readonly { readonly x: number; readonly width: number; readonly label: PlacedLabel }[]
  readonly xTicks: readonly { readonly x: number; readonly label: string }[]
  readonly yTicks: readonly { readonly y: number; readonly value: number }[]
}

const LEFT = 46
const RIGHT = 12
const BOTTOM = 26
const LABEL_ROW = 15
/** Largest over smallest value from which a linear axis hides the small ones. */
const LOG_FROM = 8
const SHAPES: Readonly<Record<TrendPoint['status'], MarkShape>> = { valid: 'circle', 'not-valid': 'diamond', pending: 'ring', withdrawn: 'cross' }

/** The model of a trend; null where no point has a value. */
export function trendModel(input: TrendInput): TrendModel | null {
  const { points, width, height } = input
  const values = points.flatMap((point) => (point.value === null ? [] : [point.value]))
  if (values.length === 0) return null
  const x = timeScale(points, width)
  const events = eventBands(input, x, width)
  const top = 8 + LABEL_ROW * rows(events)
  const all = [...values, ...input.limits.map((limit) => limit.value)]
  const logarithmic = 0 < Math.min(...all) && LOG_FROM < Math.max(...all) / Math.min(...all)
  const y = valueScale(all, [height - BOTTOM, top], logarithmic)
  const at = (point: TrendPoint) => rounded(x(utcDate(point.at)))
  return {
    width, height, plot: { left: LEFT, right: width - RIGHT, top, bottom: height - BOTTOM }, logarithmic,
    lines: validRuns(points).map((run) => line<TrendPoint>(at, (point) => rounded(y(point.value ?? 0))).digits(2)(run) ?? ''),
    ...meanPaths(input, at, y),
    marks: points.map((point) => ({ x: at(point), y: point.value === null ? height - BOTTOM - 5 : rounded(y(point.value)), shape: SHAPES[point.status], point })),
    limits: limitLines(input.limits, y, top), events,
    xTicks: timeTicks(x, width), yTicks: valueTicks(y, logarithmic, input.decimals),
  }
}

export function utcDate(text: string): Date {
  return new Date(`${text.slice(0, 10)}T00:00:00Z`)
}

function rounded(value: number): number {
  return Math.round(value * 100) / 100
}

type TimeScale = ReturnType<typeof scaleUtc<number, number>>
type ValueScale = ((value: number) => number) & { ticks(count?: number): number[] }

function timeScale(points: readonly TrendPoint[], width: number): TimeScale {
  const times = points.map((point) => utcDate(point.at).getTime())
  const [first, last] = [Math.min(...times), Math.max(...times)]
  const room = first === last ? 15 * 86_400_000 : (last - first) * 0.02
  return scaleUtc<number, number>([new Date(first - room), new Date(last + room)], [LEFT, width - RIGHT])
}

function valueScale(values: readonly number[], range: [number, number], logarithmic: boolean): ValueScale {
  const [low, high] = [Math.min(...values), Math.max(...values)]
  if (logarithmic) return scaleLog([low * 0.9, high * 1.1], range)
  const room = low === high ? Math.max(Math.abs(low) * 0.1, 0.1) : (high - low) * 0.08
  return scaleLinear([low < 0 || room < low ? low - room : Math.min(low, 0), high + room], range).nice(5)
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

function meanPaths({ points, band }: TrendInput, at: (point: TrendPoint) => number, y: ValueScale): { mean: string; band: string } {
  const withMean = points.filter((point) => point.mean !== undefined)
  const half = (mean: number) => (band === undefined ? 0 : band.relative ? Math.abs(mean) * band.half / 100 : band.half)
  const edge = (sign: 1 | -1) => (point: TrendPoint) => rounded(y((point.mean ?? 0) + sign * half(point.mean ?? 0)))
  return {
    mean: line<TrendPoint>(at, (point) => rounded(y(point.mean ?? 0))).digits(2)(withMean) ?? '',
    band: band === undefined ? '' : area<TrendPoint>(at, edge(-1), edge(1)).digits(2)(withMean) ?? '',
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

/** Width that an event's label needs, about, in a 12 px face. */
const LETTER = 6.2

function eventBands({ events }: TrendInput, x: TimeScale, width: number): TrendModel['events'] {
  const [first, last] = x.range() as [number, number]
  const bands = events.map((event) => {
    const from = rounded(x(utcDate(event.from)))
    const to = rounded(x(utcDate(event.to ?? event.from)))
    return { title: event.title, x: Math.max(first, from), end: Math.min(last, Math.max(to, from + 1.5)) }
  }).filter((band) => band.x < last && first < band.end)
  const labels = placeLabels(bands.map((band) => ({ text: band.title, x: (band.x + band.end) / 2, width: band.title.length * LETTER })), { left: LEFT, right: width - RIGHT })
  return bands.map((band, index) => ({ x: band.x, width: rounded(band.end - band.x), label: labels[index] as PlacedLabel }))
}

function rows(events: TrendModel['events']): number {
  return events.length === 0 ? 0 : 1 + Math.max(...events.map((event) => event.label.row))
}

function timeTicks(x: TimeScale, width: number): TrendModel['xTicks'] {
  const [from, to] = x.domain() as [Date, Date]
  const years = (to.getTime() - from.getTime()) / 31_557_600_000
  const month = utcFormat('%b %Y')
  const label = (date: Date) => (2 < years && date.getUTCMonth() === 0 ? String(date.getUTCFullYear()) : month(date))
  return x.ticks(width < 500 ? 3 : 7).map((date) => ({ x: rounded(x(date)), label: label(date) })).filter((tick) => tick.x < width - RIGHT - 18 && LEFT + 12 < tick.x)
}

/** A logarithmic axis is labelled at 1, 2 and 5 of each decade only. */
function valueTicks(y: ValueScale, logarithmic: boolean, decimals: number): TrendModel['yTicks'] {
  const all = y.ticks(4)
  const chosen = logarithmic ? all.filter((value) => /^[125]0*$/.test(String(value)) || value < 1) : all
  const step = 1 / 10 ** decimals
  return chosen.filter((value) => logarithmic || Math.abs(value / step - Math.round(value / step)) < 1e-6 || chosen.length < 4).map((value) => ({ y: rounded(y(value)), value }))
}
