/** How far a judged value lies inside its limit. */
import type { ClauseOutcome } from './verdict.ts'

/** What of a clause's outcome its margin is taken from. */
export type HeldAgainstLimit = Pick<ClauseOutcome, 'value' | 'compared' | 'limit'>

/**
 * The distance of a value from the limit it was held against.
 * @param clause its value as compared, after rounding, else unrounded; in the unit of its limit
 * @returns above zero inside the limit, zero on it, below zero beyond; of two ends the nearer one's; null without a
 * value or a limit
 * Note: what is rounded first meets a limit from half a step beyond it; the margin is taken after that rounding,
 * so that it never has another sign than the outcome.
 */
export function marginToLimit({ value, compared, limit }: HeldAgainstLimit): number | null {
  const held = compared ?? value
  const [first, second = first] = limit?.values ?? []
  if (held === null || limit === null || first === undefined || second === undefined) return null
  switch (limit.operator) {
    case 'at-least':
    case 'above':
      return held - first
    case 'at-most':
    case 'below':
      return first - held
    case 'between':
      return Math.min(held - first, second - held)
    case 'magnitude-at-most':
      return first - Math.abs(held)
    case 'report':
      return null
  }
}
