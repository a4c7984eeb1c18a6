/** Whether the newer results of a segment lie closer to a limit than the older ones. */
import { proportionGrowth } from '../statistics/proportion-growth.ts'
import { clustersOf, type ComparablePoint } from './comparable-points.ts'
import { ownCorrelation, unfit } from './control-charts.ts'
import { insideOf, type LimitEnd } from './limit-end.ts'
import { notShown, type Shown } from './not-shown.ts'
import type { NearGrowth } from './segment-figures.ts'

/** Fewer batches have no halves to compare: own choice. */
const LEAST = 20

/**
 * The older half of a segment held against the newer one: batches within one standard deviation of the limit, or
 * beyond it.
 * @param points of one segment, in order
 * @param end of the limit
 * @param deviation standard deviation of all points; 0 where there is none
 * Note: lots that share a control batch count as one; of an odd number the middle one counts as older.
 */
export function nearGrowth(
  points: readonly ComparablePoint[],
  end: LimitEnd,
  deviation: number,
): Shown<NearGrowth> {
  const reason = unfit(points, LEAST)
  if (reason !== undefined) return notShown(reason)
  if (deviation === 0) return notShown({ code: 'no-scatter', params: {} })
  const near = clustersOf(points).map(({ value }) => insideOf(end, value) <= deviation)
  if (near.length < LEAST)
    return notShown({ code: 'too-few-batches', params: { batches: near.length, needed: LEAST } })
  const half = Math.ceil(near.length / 2)
  const [before, after] = [near.slice(0, half), near.slice(half)].map(counted)
  if (before === undefined || after === undefined) return notShown({ code: 'no-scatter', params: {} })
  return { shown: true, before, after, p: proportionGrowth(before, after, ownCorrelation(points)) }
}

function counted(near: readonly boolean[]): { near: number; n: number } {
  return { near: near.filter((one) => one).length, n: near.length }
}
