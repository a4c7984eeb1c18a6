/** Loss of mass in one step of a thermogravimetric curve: plain, or between two tangents. */
import { lineThrough } from '../../statistics/least-squares.ts'
import { isValue, readAt, type TablePoint } from './reading-table.ts'
import type { ReferenceFault, TablePlace } from './reference-fault.ts'

/** °C. */
export interface TemperatureRange {
  readonly from: number
  readonly to: number
}

export interface StepLoss {
  readonly lossMg: number
  /** Where the distance of the tangents was taken, °C; null for a plain step. */
  readonly middle: number | null
}

/** Rows that a tangent needs: with two it would go through both whatever they are. */
const TANGENT_ROWS = 3

/**
 * Loss between two temperatures.
 * @param curve x in °C, y in mg; increasing in x
 * @param what the step is of
 * @returns mg, zero or more; a fault outside the table, for a range that runs backwards, or where mass was gained
 */
export function stepLoss(
  curve: readonly TablePoint[],
  { from, to }: TemperatureRange,
  what: TablePlace,
): StepLoss | ReferenceFault {
  if (to <= from) return { fault: 'range-backwards', what, from, to }
  const [before, after] = [readAt(curve, from, what), readAt(curve, to, what)]
  if (!isValue(before)) return before
  if (!isValue(after)) return after
  return lossOf(before - after, null, what)
}

/** A curve's straight parts on both sides of a step, °C. */
export interface Tangents {
  readonly before: TemperatureRange
  readonly after: TemperatureRange
}

/**
 * Loss between the tangents to the curve before and after its step, at the temperature of the steepest loss between them. What
 * goes off steadily all along, such as water of other hydrates, is not counted.
 * @param curve x in °C, y in mg; increasing in x
 * @returns mg, zero or more; a fault where a tangent has fewer than three rows, and as `stepLoss`
 * Source: tangential method of thermogravimetry, Lothenbach, Durdziński and De Weerdt, in A Practical Guide to Microstructural
 * Analysis of Cementitious Materials (2016), chapter 5 (from memory); lines by least squares are an own choice.
 */
export function tangentLoss(
  curve: readonly TablePoint[],
  { before, after }: Tangents,
): StepLoss | ReferenceFault {
  if (after.from <= before.to)
    return { fault: 'range-backwards', what: 'water', from: before.to, to: after.from }
  const first = tangent(curve, before, 'before')
  if ('fault' in first) return first
  const second = tangent(curve, after, 'after')
  if ('fault' in second) return second
  const step = curve.filter(({ x }) => before.to <= x && x <= after.from)
  if (step.length < 2) return { fault: 'few-rows', what: 'water', rows: step.length, least: 2 }
  const middle = steepest(step)
  return lossOf(first.at(middle) - second.at(middle), middle, 'water')
}

function lossOf(lossMg: number, middle: number | null, what: TablePlace): StepLoss | ReferenceFault {
  return lossMg < 0 ? { fault: 'negative-loss', what, lossMg } : { lossMg, middle }
}

function tangent(
  curve: readonly TablePoint[],
  { from, to }: TemperatureRange,
  what: TablePlace,
): { readonly at: (x: number) => number } | ReferenceFault {
  if (to <= from) return { fault: 'range-backwards', what, from, to }
  const own = curve.filter(({ x }) => from <= x && x <= to)
  if (own.length < TANGENT_ROWS) return { fault: 'few-rows', what, rows: own.length, least: TANGENT_ROWS }
  const { meanX, meanY, slope } = lineThrough(
    own.map(({ x }) => x),
    own.map(({ y }) => y),
  )
  return { at: (x) => meanY + slope * (x - meanX) }
}

/** Middle of the interval that loses most per degree, °C; the first of equals. */
function steepest(step: readonly TablePoint[]): number {
  const intervals = step.slice(1).map(({ x, y }, place) => {
    const low = step[place] ?? { x, y }
    return { middle: (low.x + x) / 2, rate: (low.y - y) / (x - low.x) }
  })
  return intervals.reduce((best, one) => (best.rate < one.rate ? one : best)).middle
}
