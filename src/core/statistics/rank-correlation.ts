/** How far two measures put the same things in the same order. */
import { lineThrough } from './least-squares.ts'

/**
 * Ranks from 1 on; equal values share the mean of their ranks.
 * @param values in any order; Infinity ranks on top
 * @returns in the order of the values
 */
export function meanRanks(values: readonly number[]): number[] {
  const sorted = values.toSorted((a, b) => (a < b ? -1 : a > b ? 1 : 0))
  const rankOf = new Map<number, number>()
  for (const value of sorted)
    if (!rankOf.has(value))
      // The first and the last of its like, counted from 1.
      rankOf.set(value, (sorted.indexOf(value) + 1 + sorted.lastIndexOf(value) + 1) / 2)
  return values.map((value) => rankOf.get(value) ?? Number.NaN)
}

/**
 * Spearman's rank correlation: the product-moment correlation of the ranks.
 * @param xs,ys of equal length; Infinity stands for what is known to rank on top
 * @returns −1 to 1; null for fewer than three pairs, and where one of the two is the same throughout
 * Source: Spearman 1904, Am. J. Psychol. 15, 72-101, with mean ranks for ties (from memory); scipy is the check.
 */
export function rankCorrelation(xs: readonly number[], ys: readonly number[]): number | null {
  const [a, b] = [meanRanks(xs), meanRanks(ys)]
  if (a.length < 3 || a.every((rank) => rank === a[0])) return null
  return lineThrough(a, b).r
}
