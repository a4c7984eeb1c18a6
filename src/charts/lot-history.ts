/**
 * The small chart of a certificate: this lot's result among those before it, evenly spaced, with the limits
 * it is judged by.
 */
import { extent, line, scaleLinear, ticks } from 'd3'
import { rounded } from './plot.ts'
import { dotsPath, type PointStatus, runs } from './points.ts'

export interface HistoryPoint {
  readonly value: number | null
  readonly status: PointStatus
}
export interface HistoryInput {
  readonly points: readonly HistoryPoint[]
  readonly limits: readonly number[]
  readonly width: number
  readonly height: number
}

export interface HistoryMark {
  readonly x: number
  readonly y: number
  readonly shape: PointStatus
}

export interface HistoryModel {
  readonly width: number
  readonly height: number
  readonly left: number
  readonly right: number
  /** Runs of valid neighbours as one path; the line breaks where a point is missing or not valid. */
  readonly line: string
  /** All valid points as one path of no length, for round caps. */
  readonly dots: string
  /** Points that are not valid, each in its own shape. */
  readonly marks: readonly HistoryMark[]
  readonly last: HistoryMark
  readonly limits: readonly number[]
  readonly ticks: readonly { readonly y: number; readonly value: number }[]
}

const LEFT = 34
const RIGHT = 10
const TOP = 9
const BOTTOM = 9

/** @returns null where no point has a value */
export function lotHistoryModel({ points, limits, width, height }: HistoryInput): HistoryModel | null {
  const [low, high] = extent([
    ...points.flatMap((point) => (point.value === null ? [] : [point.value])),
    ...limits,
  ])
  if (low === undefined || high === undefined || points.every((point) => point.value === null)) return null
  const room = low === high ? Math.max(1, Math.abs(low) * 0.1) : (high - low) * 0.1
  const ends: [number, number] = [low - room, high + room]
  const y = scaleLinear(ends, [height - BOTTOM, TOP])
  const marks = historyMarks(points, width, (value) => (value === null ? height - BOTTOM : y(value)))
  const valid = ({ shape }: HistoryMark) => shape === 'valid'
  return {
    width,
    height,
    left: LEFT,
    right: width - RIGHT,
    line: joinedLine(marks),
    dots: dotsPath(marks.filter(valid)),
    marks: marks.filter((mark) => !valid(mark)),
    last: marks.at(-1) as HistoryMark,
    limits: limits.map((limit) => tenth(y(limit))),
    ticks: ticks(...ends, 3).map((value) => ({ y: tenth(y(value)), value })),
  }
}

/** A small drawing keeps one decimal of a pixel. */
function tenth(pixel: number): number {
  return rounded(pixel, 1)
}

/** Evenly spaced; one alone stands in the middle. */
function historyMarks(
  points: readonly HistoryPoint[],
  width: number,
  height: (value: number | null) => number,
): HistoryMark[] {
  const step = points.length < 2 ? 0 : (width - LEFT - RIGHT) / (points.length - 1)
  return points.map(({ value, status }, index) => ({
    x: tenth(points.length < 2 ? (LEFT + width - RIGHT) / 2 : LEFT + index * step),
    y: tenth(height(value)),
    shape: value === null ? 'pending' : status,
  }))
}

/** A run of one point is no line: its dot shows it. */
function joinedLine(marks: readonly HistoryMark[]): string {
  const drawn = line<HistoryMark>(
    ({ x }) => x,
    ({ y }) => y,
  ).digits(1)
  return runs(marks, ({ shape }) => (shape === 'valid' ? 'joined' : 'break'))
    .filter((run) => 1 < run.length)
    .map((run) => drawn(run) ?? '')
    .join('')
}
