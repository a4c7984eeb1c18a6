/**
 * The small chart of a certificate: this lot's result among those before it, evenly spaced, with the limits
 * it is judged by.
 */
import { extent, line, scaleLinear, ticks } from 'd3'

export interface HistoryPoint {
  readonly value: number | null
  readonly status: 'valid' | 'not-valid' | 'pending' | 'withdrawn'
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
  readonly shape: HistoryPoint['status']
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
  const y = scaleLinear([low - room, high + room], [height - BOTTOM, TOP])
  const step = points.length < 2 ? 0 : (width - LEFT - RIGHT) / (points.length - 1)
  const marks = points.map((point, index) => ({
    x: rounded(points.length < 2 ? (LEFT + width - RIGHT) / 2 : LEFT + index * step),
    y: rounded(point.value === null ? height - BOTTOM : y(point.value)),
    shape: point.value === null ? ('pending' as const) : point.status,
  }))
  const drawn = line().digits(1)
  return {
    width,
    height,
    left: LEFT,
    right: width - RIGHT,
    line: runs(marks)
      .map((run) => drawn(run.map((mark) => [mark.x, mark.y])) ?? '')
      .join(''),
    dots: marks
      .filter(({ shape }) => shape === 'valid')
      .map(({ x, y }) => `M${x},${y}h0`)
      .join(''),
    marks: marks.filter(({ shape }) => shape !== 'valid'),
    last: marks.at(-1) as HistoryMark,
    limits: limits.map((limit) => rounded(y(limit))),
    ticks: ticks(low - room, high + room, 3).map((value) => ({ y: rounded(y(value)), value })),
  }
}

function runs(marks: readonly HistoryMark[]): HistoryMark[][] {
  const found: HistoryMark[][] = [[]]
  for (const mark of marks) {
    if (mark.shape === 'valid') found.at(-1)?.push(mark)
    else found.push([])
  }
  return found.filter((run) => run.length > 1)
}

function rounded(value: number): number {
  return Math.round(value * 10) / 10
}
