/** Words on a paired chart: the quadrants' names in the corners, and the limits beside their lines. */
import { broken } from './labels.ts'
import { type Plot, rounded } from './plot.ts'

/** Height of a line of text. */
export const ROW = 14
/** Distance of a text from the edge of the plot. */
const EDGE = 6

/** A limit on one of the axes. */
export interface PairedLimit {
  readonly value: number
  readonly label: string
}

export interface TextAt {
  readonly text: string
  readonly x: number
  readonly y: number
  readonly anchor: 'start' | 'end'
}

/** A limit as a level line, with its label. */
export interface LevelLine {
  readonly y: number
  readonly label: TextAt
}

/**
 * The quadrants' names in the four corners, broken where the quadrant is narrower than its name.
 * @param part where the limit that parts the plot stands across; null where nothing parts it
 */
export function cornerWords(part: number | null, plot: Plot): { corners: TextAt[]; rows: number } {
  if (part === null) return { corners: [], rows: 0 }
  const [leftRoom, rightRoom] = [part - plot.left - 10, plot.right - part - 10]
  const topLeft = broken('meets resistivity only', leftRoom)
  const topRight = broken('meets both', rightRoom)
  const bottomLeft = broken('meets neither', leftRoom)
  const bottomRight = broken('meets strength only', rightRoom)
  const start = { x: plot.left + EDGE, anchor: 'start' } as const
  const end = { x: plot.right - EDGE, anchor: 'end' } as const
  const atTop = (lines: readonly string[], side: typeof start | typeof end): TextAt[] =>
    lines.map((text, row) => ({ text, y: plot.top + ROW * (row + 1), ...side }))
  const atBottom = (lines: readonly string[], side: typeof start | typeof end): TextAt[] =>
    lines.map((text, row) => ({
      text,
      y: plot.bottom - EDGE - ROW * (lines.length - 1 - row),
      ...side,
    }))
  return {
    corners: [
      ...atTop(topLeft, start),
      ...atTop(topRight, end),
      ...atBottom(bottomLeft, start),
      ...atBottom(bottomRight, end),
    ],
    rows: Math.max(...[topLeft, topRight, bottomLeft, bottomRight].map((lines) => lines.length)),
  }
}

/** Each limit with its value in the right margin, where no mark is; two that would touch are set apart. */
export function levelLines(
  limits: readonly PairedLimit[],
  y: (value: number) => number,
  plot: Plot,
): LevelLine[] {
  let lowest = Number.POSITIVE_INFINITY
  return [...limits]
    .sort((a, b) => a.value - b.value)
    .map(({ value, label }) => {
      const height = rounded(y(value))
      lowest = Math.min(height + 4, lowest - ROW)
      return { y: height, label: { text: label, x: plot.right + EDGE, y: rounded(lowest), anchor: 'start' } }
    })
}
