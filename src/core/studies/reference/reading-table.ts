/** A table of readings over time or temperature, read between its rows and never beyond them. */
import type { ReferenceFault, TablePlace } from './reference-fault.ts'

export interface TablePoint {
  /** h, or °C. */
  readonly x: number
  /** mW, J, or mg. */
  readonly y: number
}

/**
 * What is wrong with a table by itself.
 * @param of what its rows must increase in
 * @returns null for a sound table
 */
export function tableFault(points: readonly TablePoint[], of: 'time' | 'temperature'): ReferenceFault | null {
  if (points.length < 2) return { fault: 'few-rows', what: 'table', rows: points.length, least: 2 }
  const row = points.findIndex(({ x }, place) => 0 < place && x <= (points[place - 1]?.x ?? x))
  return row < 0 ? null : { fault: 'not-increasing', of, row }
}

/**
 * The value at a place of a sound table, on the straight line between its two neighbours.
 * @param x h, or °C
 * @param what it is asked for
 * @returns in the unit of y; a fault outside the table
 */
export function readAt(points: readonly TablePoint[], x: number, what: TablePlace): number | ReferenceFault {
  const [first, last] = [points[0]?.x ?? Number.NaN, points.at(-1)?.x ?? Number.NaN]
  const next = points.findIndex((point) => x <= point.x)
  const [low, high] = [points[Math.max(0, next - 1)], points[next]]
  if (low === undefined || high === undefined || x < first)
    return { fault: 'outside-table', what, asked: x, first, last }
  // Linear interpolation; at a row, the row itself.
  return high.x === x ? high.y : low.y + ((high.y - low.y) * (x - low.x)) / (high.x - low.x)
}

/** Whether a value was read and not refused. @param found of `readAt` */
export function isValue(found: number | ReferenceFault): found is number {
  return typeof found === 'number'
}
