/** What the specimens of a batch that are still to be tested must reach. */
import type { RangeRule } from './batch-range.ts'

export interface NeededOfRest {
  /** Specimens still to be tested. */
  readonly left: number
  /** Mean of those left at which the mean of all is the one asked for; absent where none is. */
  readonly each?: number
  /**
   * Values, the same for each of those left, at which the permissible range of all holds; null where none is,
   * absent where no rule speaks of so many.
   */
  readonly inRange?: { readonly from: number; readonly to: number } | null
  /** The rule that `inRange` keeps to. */
  readonly rule?: RangeRule
}

/**
 * What the specimens left must reach so that the mean of all is at least a given one, and where the batch keeps its
 * permissible range.
 * @param read values of the specimens tested, in one unit
 * @param planned number of specimens of the batch
 * @param meanAtLeast mean that all together must reach, in that unit; undefined where nothing asks for one
 * @param rules permissible ranges by number of specimens
 * @returns in the same unit; undefined where none is left, and where none was tested and no mean is asked for
 * Notes: 1. `each` may lie beyond what any mortar reaches, or below zero where any value will do; 2. all specimens
 * count: that the rule may drop one is not made use of; 3. of several left, each is taken to give the same.
 * Source: the mean of n values is m where those left have the mean (n m - sum) / left; for the range, as `judgeBatch`.
 */
export function neededOfRest(
  read: readonly number[],
  planned: number,
  meanAtLeast: number | undefined,
  rules: readonly RangeRule[] = [],
): NeededOfRest | undefined {
  const left = planned - read.length
  if (left < 1) return undefined
  if (read.length === 0) return meanAtLeast === undefined ? undefined : { left, each: meanAtLeast }
  const sum = read.reduce((total, value) => total + value, 0)
  const asked = meanAtLeast === undefined ? {} : { each: (planned * meanAtLeast - sum) / left }
  const rule = rules.find(({ of, rangePercent }) => of === planned && rangePercent !== undefined)
  if (rule?.rangePercent === undefined) return { left, ...asked }
  return { left, ...asked, rule, inRange: inRange(read, planned, rule.rangePercent) }
}

/**
 * With each of those left at x and a largest range of p per cent of the mean: x - low <= p (sum + left x) / 100 n bounds
 * x from above, high - x <= p (sum + left x) / 100 n from below, and high - low of those tested must hold as well.
 */
function inRange(
  read: readonly number[],
  planned: number,
  percent: number,
): { readonly from: number; readonly to: number } | null {
  const sum = read.reduce((total, value) => total + value, 0)
  const [low, high] = [Math.min(...read), Math.max(...read)]
  const left = planned - read.length
  const share = percent / (100 * planned)
  const slope = share * left
  // x (1 - slope) <= low + share sum, and x (1 + slope) >= high - share sum.
  const to = slope < 1 ? (low + share * sum) / (1 - slope) : Number.POSITIVE_INFINITY
  // Where those tested lie far apart already, a larger mean alone makes room: slope x >= high - low - share sum.
  const from = Math.max((high - share * sum) / (1 + slope), (high - low - share * sum) / slope)
  return from <= to ? { from, to } : null
}
