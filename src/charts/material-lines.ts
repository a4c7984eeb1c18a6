/** A line for each material over the curing temperature, on a logarithmic scale. Pixels. */
import { extent, scaleLinear, scaleLog } from 'd3'
import { dodged } from './dodged.ts'
import type { DotShape } from './dot-rows.ts'
import { logTicks } from './log-ticks.ts'
import { LEFT, type Plot, rounded } from './plot.ts'

export interface MaterialSeries<Class extends string = string> {
  readonly name: string
  readonly class: Class
  /** In order of temperature, none twice; null where the material has no index. */
  readonly points: readonly {
    readonly temperature: number
    readonly value: number | null
    readonly shape: DotShape
  }[]
}

export interface MaterialLinesModel<Class extends string = string> {
  readonly width: number
  readonly height: number
  readonly plot: Plot
  /** `open` joins a point that is known only as above a bound. */
  readonly lines: readonly { readonly class: Class; readonly path: string; readonly open: string }[]
  readonly marks: readonly { readonly x: number; readonly y: number; readonly shape: DotShape }[]
  /** Names at the last point, with a leader to it; without those for which there is no room. */
  readonly names: readonly {
    readonly name: string
    readonly class: Class
    readonly x: number
    readonly y: number
    readonly leader: string
  }[]
  readonly xTicks: readonly { readonly x: number; readonly value: number }[]
  readonly yTicks: readonly { readonly y: number; readonly value: number }[]
}

const WIDTH = 380
const HEIGHT = 284
const NAMES = 62
const APART = 13
/** Between the last point and its name. */
const LEADER = 24

/**
 * @param series of one plot
 * @param range of the scale, which plots beside each other share
 */
export function materialLines<Class extends string>(
  series: readonly MaterialSeries<Class>[],
  range: readonly [number, number],
): MaterialLinesModel<Class> | null {
  const temperatures = series.flatMap(({ points }) => points.map(({ temperature }) => temperature))
  const [coolest, hottest] = extent(temperatures)
  if (coolest === undefined || hottest === undefined || coolest === hottest) return null
  const plot = { left: LEFT, right: WIDTH - NAMES, top: 8, bottom: HEIGHT - 26 }
  const x = scaleLinear([coolest, hottest], [plot.left + 16, plot.right - 10])
  const y = scaleLog(range, [plot.bottom, plot.top])
  const placed = series.map(({ name, class: own, points }) => ({
    name,
    class: own,
    points: points.map(({ temperature, value, shape }) => ({
      x: rounded(x(temperature), 1),
      y: value === null ? null : rounded(y(value), 1),
      shape,
    })),
  }))
  return {
    width: WIDTH,
    height: HEIGHT,
    plot,
    lines: placed.map(({ class: own, points }) => ({
      class: own,
      path: pathOf(points, 'known'),
      open: pathOf(points, 'open'),
    })),
    marks: placed.flatMap(({ points }) =>
      points.flatMap((one) => (one.y === null ? [] : [{ x: one.x, y: one.y, shape: one.shape }])),
    ),
    names: namesOf(placed, plot),
    xTicks: [...new Set(temperatures)]
      .toSorted((a, b) => a - b)
      .map((value) => ({ value, x: rounded(x(value), 1) })),
    yTicks: logTicks(...range, 20 / (plot.bottom - plot.top)).map((value) => ({
      value,
      y: rounded(y(value), 1),
    })),
  }
}

interface PlacedSeries<Class extends string> {
  readonly name: string
  readonly class: Class
  readonly points: readonly PlacedPoint[]
}

interface PlacedPoint {
  readonly x: number
  readonly y: number | null
  readonly shape: DotShape
}

/** Pieces between neighbours that both have a value; those to or from a bound are open. */
function pathOf(points: readonly PlacedPoint[], which: 'known' | 'open'): string {
  return points
    .flatMap((point, place) => {
      const before = points[place - 1]
      if (before === undefined || before.y === null || point.y === null) return []
      const isOpen = before.shape === 'up' || point.shape === 'up'
      return isOpen === (which === 'open') ? [`M${before.x} ${before.y}L${point.x} ${point.y}`] : []
    })
    .join('')
}

function namesOf<Class extends string>(
  placed: readonly PlacedSeries<Class>[],
  plot: Plot,
): MaterialLinesModel<Class>['names'] {
  const ends = placed.flatMap(({ name, class: own, points }) => {
    const last = points.at(-1)
    return last === undefined || last.y === null ? [] : [{ name, class: own, x: last.x, y: last.y }]
  })
  const bounds = { top: plot.top + 4, bottom: plot.bottom }
  // Where not all have room, as many from the top as have.
  const room = 1 + Math.floor((bounds.bottom - bounds.top) / APART)
  const named = ends.toSorted((a, b) => a.y - b.y).slice(0, room)
  const places = dodged(
    named.map((end) => end.y),
    APART,
    bounds,
  )
  return named.map((end, place) => {
    const at = rounded(places?.[place] ?? end.y, 1)
    const x = end.x + LEADER
    return {
      name: end.name,
      class: end.class,
      x: x + 4,
      y: at,
      leader: `M${end.x + 7} ${end.y}L${x - 6} ${at}H${x}`,
    }
  })
}
