/** One end of what a limit admits, and how far a value lies inside it. */

export interface LimitEnd {
  readonly side: 'low' | 'high'
  /** Where the outcome changes, before rounding. */
  readonly end: number
}

/**
 * Distance of a value from the end of a limit.
 * @param value in the unit of the end
 * @returns above zero inside the limit, below it beyond
 */
export function insideOf({ side, end }: LimitEnd, value: number): number {
  return side === 'low' ? value - end : end - value
}
