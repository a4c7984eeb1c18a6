/** Lines of one factor over the levels of another: parallel where the factors do not depend on each other. Pixels. */
import { scaleLog, scalePoint } from 'd3'
import { dodged } from './dodged.ts'
import { logTicks } from './log-ticks.ts'
import { LEFT, type Plot, rounded } from './plot.ts'

export interface InteractionSeries {
  readonly name: string
  /** Ratio at each level across, above zero; null where no condition holds it. */
  readonly values: readonly (number | null)[]
}

export interface InteractionLinesModel {
  readonly width: number
  readonly height: number
  readonly plot: Plot
  readonly lines: readonly { readonly path: string }[]
  readonly marks: readonly { readonly x: number; readonly y: number }[]
  /** Names at the last point of each line; without those for which there is no room. */
  readonly names: readonly { readonly name: string; readonly x: number; readonly y: number }[]
  readonly xTicks: readonly { readonly x: number; readonly text: string }[]
  readonly yTicks: readonly { readonly y: number; readonly value: number }[]
}

const WIDTH = 380
const HEIGHT = 220
const NAMES = 84
const APART = 14

/**
 * @param levels names of the levels across, two or more
 * @param series a line for each level of the other factor
 * @param range of the logarithmic scale, which plots beside each other share
 */
export function interactionLines(
  levels: readonly string[],
  series: readonly InteractionSeries[],
  range: readonly [number, number],
): InteractionLinesModel {
  const plot = { left: LEFT, right: WIDTH - NAMES, top: 8, bottom: HEIGHT - 26 }
  const across = scalePoint(
    levels.map((_, place) => place),
    [plot.left + 24, plot.right - 12],
  )
  const y = scaleLog(range, [plot.bottom, plot.top])
  const xOf = (place: number) => rounded(across(place) ?? plot.left, 1)
  const placed = series.map(({ name, values }) => ({
    name,
    points: values.map((value, place) => ({
      x: xOf(place),
      y: value === null ? null : rounded(y(value), 1),
    })),
  }))
  return {
    width: WIDTH,
    height: HEIGHT,
    plot,
    lines: placed.map(({ points }) => ({ path: pathOf(points) })),
    marks: placed.flatMap(({ points }) =>
      points.flatMap((one) => (one.y === null ? [] : [{ x: one.x, y: one.y }])),
    ),
    names: namesOf(placed, plot),
    xTicks: levels.map((text, place) => ({ text, x: xOf(place) })),
    yTicks: logTicks(...range, 24 / (plot.bottom - plot.top)).map((value) => ({
      value,
      y: rounded(y(value), 1),
    })),
  }
}

interface Point {
  readonly x: number
  readonly y: number | null
}

/** Between neighbours that both have a value: a missing one breaks the line. */
function pathOf(points: readonly Point[]): string {
  return points
    .map((point, place) => {
      const before = points[place - 1]
      return before === undefined || before.y === null || point.y === null
        ? ''
        : `M${before.x} ${before.y}L${point.x} ${point.y}`
    })
    .join('')
}

function namesOf(placed: readonly { name: string; points: readonly Point[] }[], plot: Plot) {
  const ends = placed.flatMap(({ name, points }) => {
    const last = points.findLast((one) => one.y !== null)
    return last === undefined || last.y === null ? [] : [{ name, x: last.x + 9, y: last.y }]
  })
  const places = dodged(
    ends.map((end) => end.y),
    APART,
    { top: plot.top + 4, bottom: plot.bottom },
  )
  return places === null ? [] : ends.map((end, place) => ({ ...end, y: rounded(places[place] ?? end.y, 1) }))
}
