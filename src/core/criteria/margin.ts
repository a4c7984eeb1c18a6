/** How far a compared value stands from its limit: what a reader means by "failed by 0.5 points". */
import type { Operator } from './criterion.ts'
import { withoutDust } from '../measure/rounding.ts'
import type { ClauseOutcome } from './verdict.ts'

/**
 * From the value as compared to its limit.
 * @param clause as judged; its value as compared and its limit in one unit
 * @returns above zero on the side that is asked for, below zero beyond the limit, in the clause's unit (a difference of
 * per cents is in points); null where nothing was compared with a limit
 * Note: a limit that is itself not allowed ("above") gives zero at the limit although the clause is not met.
 */
export function marginToLimit({ compared, limit }: Pick<ClauseOutcome, 'compared' | 'limit'>): number | null {
  if (compared === null || limit === null || limit.operator === 'report') return null
  const [first, second = first] = limit.values
  if (first === undefined || second === undefined) return null
  return withoutDust(MARGINS[limit.operator](compared, first, second))
}

const MARGINS: Readonly<
  Record<Exclude<Operator, 'report'>, (value: number, low: number, high: number) => number>
> = {
  'at-least': (value, low) => value - low,
  above: (value, low) => value - low,
  'at-most': (value, high) => high - value,
  below: (value, high) => high - value,
  between: (value, low, high) => Math.min(value - low, high - value),
  'magnitude-at-most': (value, high) => high - Math.abs(value),
}
