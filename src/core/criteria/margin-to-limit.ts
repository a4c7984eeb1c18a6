/** How far a judged value lies inside its limit: what a reader means by "failed by 0.5 points". */
import { withoutDust } from '../measure/rounding.ts'
import type { Operator } from './criterion.ts'
import type { ClauseOutcome } from './verdict.ts'

/** What of a clause's outcome its margin is taken from. */
export type HeldAgainstLimit = Pick<ClauseOutcome, 'outcome' | 'value' | 'bounds' | 'compared' | 'limit'>

/**
 * The distance of a value from the limit it was held against.
 * @param clause as judged; its value as compared, after rounding, else unrounded; in the unit of its limit
 * @returns above zero inside the limit, zero on it, below zero beyond, in the clause's unit (a difference of per cents is in
 * points); of two ends of a limit from the nearer one; null without a value or a limit
 * Notes: 1. what is rounded first meets a limit from half a step beyond it; the margin is taken after that rounding, so
 * that it never has another sign than the outcome; 2. of a value known only within bounds it is the least distance that
 * is sure, and null where they leave the outcome open; 3. a limit that is itself not allowed ("above") gives zero at the
 * limit although the clause is not met.
 */
export function marginToLimit({ outcome, value, bounds, compared, limit }: HeldAgainstLimit): number | null {
  const held = compared ?? value
  const [first, second = first] = limit?.values ?? []
  if (held === null || limit === null || limit.operator === 'report') return null
  if (first === undefined || second === undefined) return null
  const marginOf = MARGINS[limit.operator]
  if (bounds === undefined) return withoutDust(marginOf(held, first, second))
  // Where the value stands for one of its bounds, it was compared in its place.
  const [low, high] = [bounds.low ?? Number.NEGATIVE_INFINITY, bounds.high ?? Number.POSITIVE_INFINITY]
  const ends = [low, high].map((end) => marginOf(end === value ? held : end, first, second))
  if (outcome === 'does-not-meet') return withoutDust(Math.min(0, Math.max(...ends)))
  const isMet = outcome === 'meets' || outcome === 'meets-by-approval'
  return isMet ? withoutDust(Math.max(0, Math.min(...ends))) : null
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
