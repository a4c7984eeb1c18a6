/** Robust mean and standard deviation: what outlying laboratories hardly move. */
import { mean, sum } from '../../statistics/descriptive.ts'
import { cumulative } from '../../statistics/distributions.ts'
import { median } from '../../statistics/median.ts'

export interface Robust {
  readonly mean: number
  readonly deviation: number
  readonly rounds: number
}

/** ISO 13528, C.3.1: results are drawn in to within so many s* of x*. */
const REACH = 1.5
/** Variance of a standard normal value so drawn in; its root's inverse, 1.13339, the standard prints as 1.134. */
const DRAWN_VARIANCE =
  2 * cumulative(REACH) -
  1 -
  2 * REACH * (Math.exp(-(REACH ** 2) / 2) / Math.sqrt(2 * Math.PI)) +
  2 * REACH ** 2 * cumulative(-REACH)
const SMALLEST_STEP = 1e-12

/**
 * Algorithm A.
 * @param values two or more, in one unit
 * @returns null for fewer than two, or where more than half are the same value, so that the scatter comes out nought
 * Source: ISO 13528:2022, C.3.1, run until nothing moves; its examples E.1 and E.3 are checked.
 */
export function algorithmA(values: readonly number[]): Robust | null {
  if (values.length < 2) return null
  let centre = median(values)
  let deviation = 1.483 * median(values.map((value) => Math.abs(value - centre)))
  if (deviation === 0) return null
  for (let rounds = 1; ; rounds += 1) {
    const [low, high] = [centre - REACH * deviation, centre + REACH * deviation]
    const drawn = values.map((value) => Math.min(high, Math.max(low, value)))
    const next = mean(drawn)
    const scatter = Math.sqrt(
      sum(drawn.map((value) => (value - next) ** 2)) / (drawn.length - 1) / DRAWN_VARIANCE,
    )
    const moved = Math.max(Math.abs(next - centre), Math.abs(scatter - deviation))
    centre = next
    deviation = scatter
    if (moved <= SMALLEST_STEP * Math.max(Math.abs(centre), deviation) || rounds === 1000)
      return { mean: centre, deviation, rounds }
  }
}
