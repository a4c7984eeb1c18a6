/** Index against a reference reactivity, both logarithmic, with the line through them and the two cuts. Pixels. */
import { extent, scaleLog } from 'd3'
import {
  alongLine,
  besidePoints,
  type Box,
  boxAbout,
  overlap,
  type PlacedName,
  type Point,
} from './beside-points.ts'
import type { DotShape } from './dot-rows.ts'
import { labelWidth } from './labels.ts'
import { logTicks } from './log-ticks.ts'
import { LEFT, type Plot, rounded } from './plot.ts'

export interface ScatterPoint {
  readonly name: string
  /** Above zero. */
  readonly reference: number
  readonly index: number
  readonly shape: DotShape
  /** Drawn with a ring and named before the others. */
  readonly disagrees: boolean
}

export interface ReferenceScatterModel {
  readonly width: number
  readonly height: number
  readonly plot: Plot
  readonly points: readonly {
    readonly x: number
    readonly y: number
    readonly shape: DotShape
    readonly disagrees: boolean
  }[]
  readonly names: readonly (PlacedName & { readonly disagrees: boolean })[]
  readonly line: { readonly x1: number; readonly y1: number; readonly x2: number; readonly y2: number } | null
  readonly boundary: number | null
  readonly threshold: number | null
  /** Where the threshold is named: at an end of its line where no mark stands. */
  readonly thresholdName: ThresholdName | null
  readonly xTicks: readonly { readonly x: number; readonly value: number }[]
  readonly yTicks: readonly { readonly y: number; readonly value: number }[]
}

export interface ThresholdName {
  readonly x: number
  readonly y: number
  readonly anchor: 'start' | 'end'
}

const WIDTH = 380
const HEIGHT = 290
/** Room about the outermost values, as a share of the scale. */
const ROOM = 0.12

/** What is drawn through the points. */
export interface ScatterLines {
  /** Of the natural logarithms. */
  readonly line: { readonly slope: number; readonly intercept: number } | null
  readonly boundary: number | null
  readonly threshold: number | null
  /** As drawn. */
  readonly thresholdLabel: string
}

/** @param points those without a reference above zero are left out before */
export function referenceScatter(
  points: readonly ScatterPoint[],
  { line, boundary, threshold, thresholdLabel }: ScatterLines,
): ReferenceScatterModel | null {
  const plot = { left: LEFT, right: WIDTH - 8, top: 18, bottom: HEIGHT - 24 }
  const xRange = widened([
    ...points.map(({ reference }) => reference),
    ...(boundary === null ? [] : [boundary]),
  ])
  const yRange = widened([...points.map(({ index }) => index), ...(threshold === null ? [] : [threshold])])
  if (xRange === null || yRange === null) return null
  const x = scaleLog(xRange, [plot.left, plot.right])
  const y = scaleLog(yRange, [plot.bottom, plot.top])
  const placed = points.map(({ reference, index, ...rest }) => ({
    ...rest,
    x: rounded(x(reference), 1),
    y: rounded(y(index), 1),
  }))
  const inOrder = [...placed.filter((one) => one.disagrees), ...placed.filter((one) => !one.disagrees)]
  const disagreeing = new Set(placed.filter((one) => one.disagrees).map(({ name }) => name))
  const drawn = {
    line: line === null ? null : lineWithin(line, points, { x, y, yRange }),
    boundary: boundary === null ? null : rounded(x(boundary), 1),
    threshold: threshold === null ? null : rounded(y(threshold), 1),
  }
  const name =
    drawn.threshold === null ? null : thresholdName(drawn.threshold, thresholdLabel, { placed, plot })
  const kept = [...lineBoxes(drawn, plot), ...(name === null ? [] : [name.box])]
  return {
    width: WIDTH,
    height: HEIGHT,
    plot,
    points: placed.map(({ x, y, shape, disagrees }) => ({ x, y, shape, disagrees })),
    names: besidePoints(inOrder, { marks: placed, kept }, plot).map((one) => ({
      ...one,
      disagrees: disagreeing.has(one.name),
    })),
    ...drawn,
    thresholdName: name === null ? null : { x: name.x, y: name.y, anchor: name.anchor },
    xTicks: logTicks(...xRange, 34 / (plot.right - plot.left)).map((value) => ({
      value,
      x: rounded(x(value), 1),
    })),
    yTicks: logTicks(...yRange, 22 / (plot.bottom - plot.top)).map((value) => ({
      value,
      y: rounded(y(value), 1),
    })),
  }
}

/** The lines as small boxes that names keep off. */
function lineBoxes(
  { line, boundary, threshold }: Pick<ReferenceScatterModel, 'line' | 'boundary' | 'threshold'>,
  plot: Plot,
): Box[] {
  const { left, right, top, bottom } = plot
  const ways = [
    line === null ? [] : alongLine({ x: line.x1, y: line.y1 }, { x: line.x2, y: line.y2 }, 4),
    boundary === null ? [] : alongLine({ x: boundary, y: top }, { x: boundary, y: bottom }, 4),
    threshold === null ? [] : alongLine({ x: left, y: threshold }, { x: right, y: threshold }, 4),
  ]
  return ways.flat().map((point) => boxAbout(point, 1.5))
}

/** Above or below the line, at its left or right end: the first that is free; above at the left where none is. */
function thresholdName(
  y: number,
  label: string,
  { placed, plot }: { readonly placed: readonly Point[]; readonly plot: Plot },
): ThresholdName & { readonly box: Box } {
  const width = labelWidth(label)
  const places = [-5, 14].flatMap((down) =>
    (['start', 'end'] as const).map((anchor) => {
      const x = anchor === 'start' ? plot.left + 3 : plot.right - 3
      const left = anchor === 'start' ? x : x - width
      return {
        x,
        y: y + down,
        anchor,
        box: { left, right: left + width, top: y + down - 10, bottom: y + down + 3 },
      }
    }),
  )
  const isFree = ({ box }: { readonly box: Box }) => !placed.some((point) => overlap(boxAbout(point, 7), box))
  const [first] = places
  if (first === undefined) throw new RangeError('thresholdName needs a place, got none')
  return places.find(isFree) ?? first
}

function widened(values: readonly number[]): [number, number] | null {
  const [least, most] = extent(values)
  if (least === undefined || most === undefined) return null
  const room = Math.max((most / least) ** ROOM, 1.02)
  return [least / room, most * room]
}

interface Scales {
  readonly x: (value: number) => number
  readonly y: (value: number) => number
  readonly yRange: readonly [number, number]
}

/** From the least to the greatest reference, cut where it leaves the plot. */
function lineWithin(
  { slope, intercept }: NonNullable<ScatterLines['line']>,
  points: readonly ScatterPoint[],
  { x, y, yRange }: Scales,
): ReferenceScatterModel['line'] {
  const [least = 1, most = 1] = extent(points.map(({ reference }) => reference))
  const reach = yRange.map((index) => (Math.log(index) - intercept) / slope).toSorted((a, b) => a - b)
  const from = Math.max(Math.log(least), reach[0] ?? Number.NEGATIVE_INFINITY)
  const to = Math.min(Math.log(most), reach[1] ?? Number.POSITIVE_INFINITY)
  if (!(from < to)) return null
  const at = (log: number) => [rounded(x(Math.exp(log)), 1), rounded(y(Math.exp(intercept + slope * log)), 1)]
  const [[x1 = 0, y1 = 0], [x2 = 0, y2 = 0]] = [at(from), at(to)]
  return { x1, y1, x2, y2 }
}
