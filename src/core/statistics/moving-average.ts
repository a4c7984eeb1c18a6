/** Mean of the last few values. */
import { mean } from './descriptive.ts'

/**
 * Moving averages, each with the place of its last value.
 * @param values in order, in one unit
 * @param count values in each, 1 or more
 * @returns none for the first count − 1 values
 * Source: NIST/SEMATECH e-Handbook of Statistical Methods, 6.4.2.1 (from memory).
 */
export function movingAverages(values: readonly number[], count: number): { at: number; value: number }[] {
  return values.slice(count - 1).map((_, place) => ({
    at: place + count - 1,
    value: mean(values.slice(place, place + count)),
  }))
}
