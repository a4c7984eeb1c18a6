/** Duplicate tests: two results of one laboratory on one sample, which differ by the scatter of testing alone. */
import { isBounded } from './bounds.ts'
import { byTest } from './by-test.ts'
import type { Duplicates, Result } from './result.ts'

/**
 * The first two tests of a result's own sample by its own laboratory.
 * @param result that stands for its lot
 * @param alike results of the lot of the same property, condition, age and method
 * @returns undefined where there are no two that are valid and numbers
 * Note: a grab and a composite, or two laboratories, differ by more than testing, and are no duplicates.
 */
export function duplicatesOf(result: Result, alike: readonly Result[]): Duplicates | undefined {
  if (alike.length < 2) return undefined
  const [first, second] = alike
    .filter(
      (other) =>
        other.valid &&
        !isBounded(other) &&
        other.laboratory === result.laboratory &&
        other.sample === result.sample,
    )
    .sort(byTest)
  return first === undefined || second === undefined
    ? undefined
    : { first: first.value, difference: Math.abs(first.value - second.value) }
}
