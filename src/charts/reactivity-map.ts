/** Heat across, calcium hydroxide consumed upward, with the regions that a study states. Pixels. */
import { extent, scaleLinear } from 'd3'
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
import { LEFT, type Plot, rounded } from './plot.ts'

export interface MapPoint {
  readonly name: string
  readonly heat: number
  readonly consumed: number
  readonly shape: DotShape
}

/** From an end, and below the other; null where it is open. */
export interface MapSpan {
  readonly from: number | null
  readonly below: number | null
}

export interface MapRegion {
  readonly name: string
  readonly heat: MapSpan
  readonly consumed: MapSpan
}

export interface MapEdge {
  readonly x1: number
  readonly y1: number
  readonly x2: number
  readonly y2: number
}

/** Broken at its commas; `y` of its first line. */
export interface RegionName {
  readonly lines: readonly string[]
  readonly x: number
  readonly y: number
}

export interface ReactivityMapModel {
  readonly width: number
  readonly height: number
  readonly plot: Plot
  /** From one line of a name to the next. */
  readonly lineHeight: number
  readonly points: readonly { readonly x: number; readonly y: number; readonly shape: DotShape }[]
  readonly names: readonly PlacedName[]
  /** Each boundary once. */
  readonly edges: readonly MapEdge[]
  /** Without those for which there is no room. */
  readonly regionNames: readonly RegionName[]
  readonly xTicks: readonly { readonly x: number; readonly value: number }[]
  readonly yTicks: readonly { readonly y: number; readonly value: number }[]
}

const WIDTH = 380
const HEIGHT = 320
/** Room about the outermost values, as a share of their span. */
const ROOM = 0.07
/** Of the name of a region. */
const LINE = 14

/** @returns null without points */
export function reactivityMap(
  points: readonly MapPoint[],
  regions: readonly MapRegion[],
): ReactivityMapModel | null {
  if (points.length === 0) return null
  const plot = { left: LEFT, right: WIDTH - 8, top: 10, bottom: HEIGHT - 24 }
  const ends = (of: 'heat' | 'consumed') =>
    regions.flatMap((region) => [region[of].from, region[of].below].filter((end) => end !== null))
  const x = scaleLinear(widened([...points.map(({ heat }) => heat), ...ends('heat')]), [
    plot.left,
    plot.right,
  ])
  const y = scaleLinear(widened([...points.map(({ consumed }) => consumed), ...ends('consumed')]), [
    plot.bottom,
    plot.top,
  ])
  const placed = points.map(({ name, heat, consumed, shape }) => ({
    ...{ name, shape },
    x: rounded(x(heat), 1),
    y: rounded(y(consumed), 1),
  }))
  const boxes = regions.map(({ name, heat, consumed }) => ({
    name,
    left: heat.from === null ? plot.left : rounded(x(heat.from), 1),
    right: heat.below === null ? plot.right : rounded(x(heat.below), 1),
    bottom: consumed.from === null ? plot.bottom : rounded(y(consumed.from), 1),
    top: consumed.below === null ? plot.top : rounded(y(consumed.below), 1),
  }))
  const edges = edgesOf(boxes, plot)
  const regionNames = boxes.flatMap((box) => regionName(box, placed))
  const kept = [
    ...regionNames.map(({ box }) => box),
    ...edges.flatMap(({ x1, y1, x2, y2 }) =>
      alongLine({ x: x1, y: y1 }, { x: x2, y: y2 }, 4).map((point) => boxAbout(point, 1.5)),
    ),
  ]
  return {
    width: WIDTH,
    height: HEIGHT,
    plot,
    lineHeight: LINE,
    points: placed.map(({ x, y, shape }) => ({ x, y, shape })),
    names: besidePoints(placed, { marks: placed, kept }, plot),
    edges,
    regionNames: regionNames.map(({ lines, x, y }) => ({ lines, x, y })),
    xTicks: x.ticks(6).map((value) => ({ value, x: rounded(x(value), 1) })),
    yTicks: y.ticks(6).map((value) => ({ value, y: rounded(y(value), 1) })),
  }
}

/** With nothing among them, so that no distance looks larger than it is. */
function widened(values: readonly number[]): [number, number] {
  const [least = 0, most = 1] = extent([...values, 0])
  const room = Math.max(most - least, 1) * ROOM
  return [least - (least < 0 ? room : room / 2), most + room]
}

/** Sides of the regions within the plot, each once where two regions share it. */
function edgesOf(boxes: readonly Box[], plot: Plot): MapEdge[] {
  const all = boxes.flatMap(({ left, right, top, bottom }): MapEdge[] => [
    ...[left, right]
      .filter((x) => plot.left < x && x < plot.right)
      .map((x) => ({ x1: x, y1: top, x2: x, y2: bottom })),
    ...[top, bottom]
      .filter((y) => plot.top < y && y < plot.bottom)
      .map((y) => ({ x1: left, y1: y, x2: right, y2: y })),
  ])
  return [...new Map(all.map((edge) => [JSON.stringify(edge), edge])).values()]
}

interface NamedBox extends Box {
  readonly name: string
}

/** In the first corner that is free of marks; in none where the region is too narrow. */
function regionName(
  { name, left, right, top, bottom }: NamedBox,
  points: readonly Point[],
): (RegionName & { readonly box: Box })[] {
  const lines = name.split(/(?<=,) /)
  const [width, height] = [Math.max(...lines.map(labelWidth)) + 4, lines.length * LINE]
  if (right - left < width + 8 || bottom - top < height + 6) return []
  const corners = [top + LINE, bottom - height + LINE - 6].flatMap((y) =>
    [left + 5, right - width - 3].map((x) => ({ x: rounded(x, 1), y: rounded(y, 1) })),
  )
  const free = corners
    .map(({ x, y }) => ({
      ...{ lines, x, y },
      box: { left: x, right: x + width, top: y - 11, bottom: y - 11 + height },
    }))
    .find(({ box }) => !points.some((point) => overlap(boxAbout(point, 7), box)))
  return free === undefined ? [] : [free]
}
