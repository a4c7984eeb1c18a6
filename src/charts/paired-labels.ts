/** Words on a paired chart: the quadrants' names in the corners, and the limits beside their lines. */
import { least } from 'd3'
import { broken, labelWidth, shortened } from './labels.ts'
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

/** The room that a text or a mark takes. */
export type Box = Plot

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

export function boxOf({ text, x, y, anchor }: TextAt): Box {
  const width = labelWidth(text)
  return {
    left: anchor === 'start' ? x : x - width,
    right: anchor === 'start' ? x + width : x,
    top: y - 11,
    bottom: y + 3,
  }
}

function overlap(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom
}

interface Drawn {
  readonly plot: Plot
  readonly marks: readonly Box[]
  /** What other texts take. */
  readonly taken: readonly Box[]
}

/** Each label stands at that end and side of its line where it covers the fewest marks, and no other text. */
export function levelLines(
  limits: readonly PairedLimit[],
  y: (value: number) => number,
  { plot, marks, taken }: Drawn,
): LevelLine[] {
  const texts = [...taken]
  return limits.map((limit) => {
    const height = rounded(y(limit.value))
    const label = bestLabel(limit.label, height, { plot, marks, taken: texts })
    texts.push(boxOf(label))
    return { y: height, label }
  })
}

/** Outside the plot is worst, then over another text, then over a mark; the first of several as good. */
function bestLabel(label: string, height: number, { plot, marks, taken }: Drawn): TextAt {
  const text = shortened(label, plot.right - plot.left - 2 * EDGE)
  const heights = [height - 5, height + 14].map((y) => rounded(y))
  const wishes: TextAt[] = [
    ...heights.map((y) => ({ text, x: plot.left + EDGE, y, anchor: 'start' as const })),
    ...heights.map((y) => ({ text, x: plot.right - EDGE, y, anchor: 'end' as const })),
  ]
  const cost = (wish: TextAt) => {
    const box = boxOf(wish)
    const covered = (boxes: readonly Box[]) => boxes.filter((other) => overlap(box, other)).length
    const outside = box.top < plot.top || plot.bottom < box.bottom
    return (outside ? 1e6 : 0) + 1e4 * covered(taken) + covered(marks)
  }
  return least(wishes, cost) as TextAt
}
