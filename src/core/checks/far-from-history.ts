/** Audit check: a result about ten times larger or smaller than those before it, as a shifted point makes it. */
import { median } from '../statistics/median.ts'
import { type History, historyKey, precedingResults } from '../history/history.ts'
import type { Moment } from '../measure/moment.ts'
import { property } from '../measure/properties.ts'
import { isBounded } from '../result/bounds.ts'
import type { Result } from '../result/result.ts'
import { type Finding, warningOn } from './finding.ts'

/** Own choice: fewer do not show what is usual. */
const FEWEST = 5
const MOST = 10
/** A shifted point makes ten; some scatter beside it: own choice. */
const FACTOR = 7
/** Per cents nearer than so many points are all next to nothing: own choice. */
const NEAR_POINTS = 0.5

/**
 * Warnings on reported results that are many times the median of the preceding ones, or a small part of it.
 * @param lot id as SOURCE/LOT, its class, and its results on a date
 * @param history of its source
 * @param asOf calendar date
 * Note: what is measured and above zero alone, and known rather than within bounds; results of mortars scatter with
 * their controls.
 */
export function farFromHistory(
  lot: { readonly id: string; readonly class: string | null; readonly results: readonly Result[] },
  history: History,
  asOf: Moment,
): Finding[] {
  return lot.results.flatMap((result) => {
    if (!isAsked(result)) return []
    const key = historyKey(lot.class, result.property, undefined, undefined, result.method)
    const values = precedingResults(history, key, lot.id, asOf, MOST)
      .filter((before) => !isBounded(before))
      .map(({ value }) => value)
    if (values.length < FEWEST) return []
    const middle = median(values)
    const isFar =
      FACTOR * Math.min(result.value, middle) < Math.max(result.value, middle) &&
      (result.unit !== '%' || NEAR_POINTS < Math.abs(result.value - middle))
    // What stood so before is usual, however far from the median.
    const isNew = values.every((value) => 2 * Math.min(value, result.value) < Math.max(value, result.value))
    return isFar && isNew ? [farOff(lot.id, result, middle, values.length)] : []
  })
}

function isAsked(result: Result): boolean {
  const { role, valid, condition, property: key, value } = result
  const isCounted = role === 'producer' && valid && !isBounded(result) && condition === undefined
  return isCounted && 0 < value && property(key).nature === 'measured'
}

function farOff(lot: string, result: Result, middle: number, n: number): Finding {
  const { property: key, laboratory, sample, value, decimals, unit } = result
  const of = { lot, property: key, condition: null, age: null, laboratory, sample }
  return warningOn(
    lot,
    { code: 'far-from-history', params: { ...of, value, decimals, unit, median: middle, n } },
    result.key,
  )
}
