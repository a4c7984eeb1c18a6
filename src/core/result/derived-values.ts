/**
 * Values that only a clause asks for: another sense of a result, or a product of two. They are not printed
 * with the results.
 */
import { property, type PropertyKey, storedUnit } from '../measure/properties.ts'
import type { Result } from './result.ts'

/**
 * @param key property that no result states
 * @param results of the lot
 * @returns what follows for that property, one for each result or pair of one analysis, under the key of the
 * result it comes from
 * Note: a censored value would turn into one above a bound, which no clause can be held against: nothing
 * follows from it.
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
