/**
 * One panel of a source's charts: results across an axis that all panels share, limits and last value for the
 * margin at its right. Across in thousandths of the width, down in pixels.
 */
import { area, curveLinear, extent, line, scaleLinear } from 'd3'
import { type MarginLabel, marginLabels, type MarginWish } from './panel-margin.ts'
import { thinned } from './panel-thinning.ts'
import type { PointStatus } from './points.ts'
import { rounded } from './plot.ts'
import type { ReadPoint } from './read-point.ts'

export interface PanelPoint {
  /** Thousandths of the width. */
  readonly x: number
  /** null for what is still awaited. */
  readonly value: number | null
  readonly status: PointStatus
  /** Beyond a limit of the governing set. */
  readonly outside: boolean
  /** Beyond it, and yet the lot does not fail by it: another result of the clause decides. */
  readonly alone?: boolean
  /** Which laboratory, by order of appearance: its shape. */
  readonly shape: number
  /** No line leads here from the point before. */
  readonly breaks: boolean
  /** Far off the batches before it. */
  readonly off?: boolean
  /** Drawn pale: a batch that no lot of the source rests on. */
  readonly pale?: boolean
  /** Mean of the preceding results. */
  readonly mean?: number
  /** What is read out at it; a point without words is passed over. */
  readonly words?: string
}

export interface PanelLimit {
  readonly value: number
  /** "75 at least". */
  readonly label: string
}

/** Mean and limits of a control chart, over the stretch that they hold for. */
export interface PanelLevel {
  readonly from: number
  readonly to: number
  readonly centre: number
  readonly low: number
  readonly high: number
}

export interface PanelInput {
  readonly points: readonly PanelPoint[]
  readonly limits: readonly PanelLimit[]
  /** Around the mean of the preceding results. */
  readonly band?: { readonly half: number; readonly relative: boolean }
  /** Words for the last value: "84 last". */
  readonly last: string | null
  /** Lowest and highest value, for a drawing without ticks. */
  readonly extremes?: readonly PanelLimit[]
  readonly height: number
  /** Stretches with a mean and limits of their own chart. */
  readonly levels?: readonly PanelLevel[]
  /** Joined by a line; batches stand as points alone. */
  readonly joined: boolean
}

export interface PanelMark {
  readonly x: number
  readonly y: number
  readonly mark: 'outside' | 'outside-alone' | 'off' | 'not-valid' | 'withdrawn' | 'awaited'
}

export interface PanelModel {
  readonly height: number
  readonly lines: string
  readonly mean: string
  readonly band: string
  /** Limits of a control chart. */
  readonly bounds: string
  /** Dots by shape: the round ones, the square ones, the pale ones. */
  readonly dots: readonly { readonly shape: 'round' | 'square' | 'pale'; readonly path: string }[]
  readonly marks: readonly PanelMark[]
  readonly limits: readonly number[]
  readonly ticks: readonly { readonly y: number; readonly value: number }[]
  readonly margin: readonly MarginLabel[]
  /** What is read out, from left to right. */
  readonly readings: readonly ReadPoint[]
  /** How many points are drawn of how many. */
  readonly drawn: number
  readonly of: number
}

const TOP = 9
const BOTTOM = 9
/** A limit further off than this many spans of the values is stated with an arrow. */
const OFF_SCALE = 1
/** An awaited result stands this far above the lower edge. */
const FLOAT = 6

type Scale = (value: number) => number

/** null where no point has a value. */
export function panelModel(input: PanelInput): PanelModel | null {
  const values = input.points.flatMap(({ value }) => (value === null ? [] : [value]))
  const [low, high] = extent([...values, ...bandEnds(input), ...levelEnds(input)])
  if (low === undefined || high === undefined) return null
  const near = input.limits.filter(({ value }) => isNear(value, low, high))
  const scale = scaleLinear(spread([low, high, ...near.map(({ value }) => value)]), [
    input.height - BOTTOM,
    TOP,
  ])
  const y: Scale = (value) => rounded(scale(value), 1)
  const points = thinned(input.points)
  return {
    height: input.height,
    ...pathsOf(points, input, y),
    dots: dotsOf(points, y),
    marks: marksOf(points, y, input.height),
    limits: near.map(({ value }) => y(value)),
    ticks: scale.ticks(input.height < 110 ? 3 : 4).map((value) => ({ value, y: y(value) })),
    margin: marginLabels(wishesOf(input, { y, low, high }), input.height),
    readings: points.flatMap(({ x, value, words }) =>
      words === undefined ? [] : [{ x, y: value === null ? input.height - FLOAT : y(value), words }],
    ),
    drawn: points.length,
    of: input.points.length,
  }
}

function isNear(value: number, low: number, high: number): boolean {
  const room = OFF_SCALE * Math.max(high - low, Math.abs(high) * 0.02)
  return low - room <= value && value <= high + room
}

function spread(values: readonly number[]): [number, number] {
  const [low = 0, high = 0] = extent(values)
  const room = low === high ? Math.max(Math.abs(low) * 0.05, 0.05) : (high - low) * 0.05
  return [low - room, high + room]
}

function bandEnds({ points, band }: PanelInput): number[] {
  if (band === undefined) return []
  return points.flatMap(({ mean }) => (mean === undefined ? [] : [edge(mean, -1, band), edge(mean, 1, band)]))
}

function levelEnds({ levels = [] }: PanelInput): number[] {
  return levels.flatMap(({ low, high }) => [low, high])
}

function edge(mean: number, sign: 1 | -1, band: NonNullable<PanelInput['band']>): number {
  return mean + sign * (band.relative ? (Math.abs(mean) * band.half) / 100 : band.half)
}

function pathsOf(
  points: readonly PanelPoint[],
  { band, joined, levels = [] }: PanelInput,
  y: Scale,
): Pick<PanelModel, 'lines' | 'mean' | 'band' | 'bounds'> {
  const x = (point: PanelPoint) => point.x
  const path = line<PanelPoint>(x, ({ value }) => y(value ?? 0))
    .curve(curveLinear)
    .digits(1)
  const withMean = points.filter(({ mean }) => mean !== undefined)
  const end = (sign: 1 | -1) => (point: PanelPoint) => (band ? y(edge(point.mean ?? 0, sign, band)) : 0)
  return {
    lines: joined
      ? runsOf(points)
          .map((run) => path(run) ?? '')
          .join('')
      : '',
    mean:
      band === undefined
        ? levels.map(({ from, to, centre }) => level(from, to, y(centre))).join('')
        : (line<PanelPoint>(x, ({ mean = 0 }) => y(mean)).digits(1)(withMean) ?? ''),
    bounds: levels
      .flatMap(({ from, to, low, high }) => [level(from, to, y(low)), level(from, to, y(high))])
      .join(''),
    band: band === undefined ? '' : (area<PanelPoint>(x, end(-1), end(1)).digits(1)(withMean) ?? ''),
  }
}

function level(from: number, to: number, y: number): string {
  return `M${from},${y}H${to}`
}

/** Neighbours that may be compared; a line passes over what is awaited and ends at what does not count. */
function runsOf(points: readonly PanelPoint[]): PanelPoint[][] {
  const runs: PanelPoint[][] = [[]]
  for (const point of points) {
    if (point.status === 'pending') continue
    if (point.breaks || point.status !== 'valid') runs.push([])
    if (point.status === 'valid') runs.at(-1)?.push(point)
  }
  return runs.filter((run) => 1 < run.length)
}

function dotsOf(points: readonly PanelPoint[], y: Scale): PanelModel['dots'] {
  const plain = points.filter(
    ({ status, outside, off, value }) => status === 'valid' && !outside && off !== true && value !== null,
  )
  const shapeOf = ({ pale, shape }: PanelPoint) =>
    pale === true ? 'pale' : shape % 2 === 0 ? 'round' : 'square'
  return [...Map.groupBy(plain, shapeOf)].map(([shape, own]) => ({
    shape,
    path: own.map(({ x, value }) => `M${x},${y(value ?? 0)}h0`).join(''),
  }))
}

function marksOf(points: readonly PanelPoint[], y: Scale, height: number): PanelMark[] {
  return points.flatMap(({ x, value, status, outside, alone, off }): PanelMark[] => {
    if (status === 'pending' || value === null) return [{ x, y: height - FLOAT, mark: 'awaited' }]
    if (status !== 'valid') return [{ x, y: y(value), mark: status }]
    if (off === true) return [{ x, y: y(value), mark: 'off' }]
    return outside ? [{ x, y: y(value), mark: alone === true ? 'outside-alone' : 'outside' }] : []
  })
}

function wishesOf(
  { points, limits, last, extremes = [] }: PanelInput,
  { y, low, high }: { y: Scale; low: number; high: number },
): MarginWish[] {
  const newest = points.findLast(({ status, value }) => status === 'valid' && value !== null)
  const own: MarginWish[] =
    last === null || newest === undefined || newest.value === null
      ? []
      : [{ y: y(newest.value), text: last, kind: 'last' }]
  const ends = extremes.map(({ value, label }): MarginWish => ({ y: y(value), text: label, kind: 'other' }))
  return [...limits.map((limit) => limitWish(limit, { y, low, high })), ...ends, ...own]
}

function limitWish(
  { value, label }: PanelLimit,
  { y, low, high }: { y: Scale; low: number; high: number },
): MarginWish {
  if (isNear(value, low, high)) return { y: y(value), text: label, kind: 'limit' }
  return value < low
    ? { y: Number.POSITIVE_INFINITY, text: `${label} ↓`, kind: 'limit' }
    : { y: Number.NEGATIVE_INFINITY, text: `${label} ↑`, kind: 'limit' }
}
