/** Calendar years of lots and shipments, by which registers are divided. */
import { type Moment, yearOf } from '../../core/measure/moment.ts'
import type { ListedLot } from '../shape/edition.ts'

/** Each year once, the latest first. */
export function yearsOf(moments: Iterable<Moment>): string[] {
  const years = new Set<string>()
  for (const moment of moments) years.add(yearOf(moment))
  return [...years].sort().reverse()
}

/** Lots sampled in a year, newest first. @param lots in order of sampling */
export function sampledIn(lots: readonly ListedLot[], year: string): ListedLot[] {
  return lots.filter(({ sampled }) => yearOf(sampled) === year).reverse()
}

/** How many fall in each year, in the order of `years`. */
export function countByYear(moments: readonly Moment[], years: readonly string[]): number[] {
  const counts = new Map<string, number>()
  for (const moment of moments) counts.set(yearOf(moment), (counts.get(yearOf(moment)) ?? 0) + 1)
  return years.map((year) => counts.get(year) ?? 0)
}
