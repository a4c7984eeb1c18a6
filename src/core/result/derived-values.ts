/**
 * Values that only a clause asks for: another sense of a result, or a product of two. They are not printed
 * with the results.
 */
import { property, type PropertyKey, storedUnit } from '../measure/properties.ts'
import type { Result } from './result.ts'

/**
 * What follows from a lot's results for a property that none of them states.
 * @param key the property: passing or residue at 45 µm, or the multiple factor; nothing follows for others
 * @returns one for each result or pair of one analysis, under the key of the result it comes from
 * Note: a censored value would turn into one above a bound, which no clause can be held against: nothing
 * follows from it.
 * Source: passing is 100 less the residue; ASTM C618, multiple factor = loss on ignition × residue (from
 * memory).
 */
export function derivedOnDemand(key: PropertyKey, results: readonly Result[]): Result[] {
  switch (key) {
    case 'passing-45um':
      return of('residue-45um', results).map((result) =>
        derived(result, key, 100 - result.value, result.decimals),
      )
    case 'residue-45um':
      return of('passing-45um', results).map((result) =>
        derived(result, key, 100 - result.value, result.decimals),
      )
    case 'multiple-factor':
      return of('residue-45um', results).flatMap((residue) =>
        of('loss-on-ignition', results)
          .filter((loss) => loss.sample === residue.sample && loss.laboratory === residue.laboratory)
          // ASTM C618, optional requirements: multiple factor (from memory).
          .map((loss) => derived(residue, key, loss.value * residue.value, property(key).decimals)),
      )
    default:
      return []
  }
}

function of(key: PropertyKey, results: readonly Result[]): Result[] {
  return results.filter((result) => result.property === key && result.censored === undefined)
}

function derived(
  { written: _written, basis: _basis, ...from }: Result,
  key: PropertyKey,
  value: number,
  decimals: number,
): Result {
  return { ...from, property: key, value, unit: storedUnit(key), decimals }
}
