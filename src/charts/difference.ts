/** Differences of two laboratories against the date of test, with the band that testing alone allows. */
import { extent, scaleLinear, ticks } from 'd3'
import { LEFT, type Plot, RIGHT, rounded } from './plot.ts'

export interface DifferencePoint {
  /** Since 1970-01-01. */
  readonly day: number
  readonly difference: number
  /** What it may be on either side of zero; absent where no precision is stated. */
  readonly allowed?: number | undefined
  readonly beyond: boolean
  readonly opposite: boolean
}

export interface DifferenceInput {
  /** In order of day, at least one. */
  readonly points: readonly DifferencePoint[]
  readonly mean: number | null
  readonly interval: readonly [number, number] | null
  /** Days on which a laboratory changed. */
  readonly changes: readonly number[]
}

export interface DifferenceMark {
  readonly shape: 'within' | 'beyond'
  readonly path: string
  /** Ring about a pair on opposite sides of a limit. */
  readonly ring: { readonly x: number; readonly y: number } | null
}

export interface DifferenceModel {
  readonly width: number
  readonly height: number
  readonly plot: Plot
  readonly yTicks: readonly { readonly value: number; readonly y: number }[]
  readonly zero: number
  /** Outline of the band; null where no pair has one. */
  readonly band: string | null
  readonly marks: readonly DifferenceMark[]
  readonly mean: {
    readonly x: number
    readonly y: number
    readonly low: number | null
    readonly high: number | null
  } | null
  readonly changes: readonly number[]
  /** First and last day with where they stand. */
  readonly ends: readonly { readonly day: number; readonly x: number; readonly anchor: 'start' | 'end' }[]
}

const WIDTH = 360
const HEIGHT = 190
/** Room at the right for the mean with its interval. */
const MEAN_ROOM = 46
const INSET = 12
const RADIUS = 4

export function differenceModel(input: DifferenceInput): DifferenceModel {
  const plot = { left: LEFT, right: WIDTH - RIGHT - MEAN_ROOM, top: 12, bottom: HEIGHT - 26 }
  const [low, high] = reach(input)
  const y = scaleLinear([low, high], [plot.bottom, plot.top]).nice(5)
  const days = input.points.map(({ day }) => day)
  const [first = 0, last = first] = extent(days)
  const x = scaleLinear(first === last ? [first - 1, last + 1] : [first, last], [
    plot.left + INSET,
    plot.right - INSET,
  ])
  const [from = low, to = high] = y.domain()
  return {
    width: WIDTH,
    height: HEIGHT,
    plot,
    yTicks: ticks(from, to, 5).map((value) => ({ value, y: rounded(y(value)) })),
    zero: rounded(y(0)),
    band: bandOf(input.points, x, y, plot),
    marks: input.points.map((point) => markOf(point, rounded(x(point.day)), rounded(y(point.difference)))),
    mean: meanOf(input, y),
    changes: input.changes.filter((day) => first < day && day <= last).map((day) => rounded(x(day - 0.5))),
    ends:
      first === last
        ? [{ day: first, x: rounded(x(first)), anchor: 'start' }]
        : [
            { day: first, x: plot.left, anchor: 'start' },
            { day: last, x: plot.right, anchor: 'end' },
          ],
  }
}

function reach({ points, interval }: DifferenceInput): [number, number] {
  const bands = points.flatMap(({ allowed }) => (allowed === undefined ? [] : [-allowed, allowed]))
  const [low = 0, high = 0] = extent([
    0,
    ...bands,
    ...(interval ?? []),
    ...points.map(({ difference }) => difference),
  ])
  return low === high ? [low - 1, high + 1] : [low, high]
}

type Place = (value: number) => number

/** From edge to edge of the plot; a pair without a limit takes part in none. */
function bandOf(
  points: readonly DifferencePoint[],
  x: Place,
  y: Place,
  { left, right }: Plot,
): string | null {
  const held = points.flatMap(({ day, allowed }) => (allowed === undefined ? [] : [{ at: x(day), allowed }]))
  const [first, last] = [held[0], held.at(-1)]
  if (first === undefined || last === undefined) return null
  const along = [{ ...first, at: left }, ...held, { ...last, at: right }]
  const upper = along.map(({ at, allowed }) => `${rounded(at)} ${rounded(y(allowed))}`)
  const lower = along.toReversed().map(({ at, allowed }) => `${rounded(at)} ${rounded(y(-allowed))}`)
  return `M${[...upper, ...lower].join('L')}Z`
}

function markOf({ beyond, opposite }: DifferencePoint, x: number, y: number): DifferenceMark {
  return {
    shape: beyond ? 'beyond' : 'within',
    path: beyond ? square(x, y) : disc(x, y),
    ring: opposite ? { x, y } : null,
  }
}

function disc(x: number, y: number): string {
  return `M${x - RADIUS} ${y}a${RADIUS} ${RADIUS} 0 1 0 ${2 * RADIUS} 0a${RADIUS} ${RADIUS} 0 1 0 ${-2 * RADIUS} 0Z`
}

function square(x: number, y: number): string {
  return `M${rounded(x)} ${rounded(y - 6)}l6 6l-6 6l-6 -6Z`
}

function meanOf({ mean, interval }: DifferenceInput, y: Place): DifferenceModel['mean'] {
  if (mean === null) return null
  return {
    x: WIDTH - RIGHT - MEAN_ROOM / 2,
    y: rounded(y(mean)),
    low: interval === null ? null : rounded(y(interval[0])),
    high: interval === null ? null : rounded(y(interval[1])),
  }
}
