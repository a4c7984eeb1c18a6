/** The value of a clause that sets no limit on it, as its outcome carries it. */
import type { Comparison } from '../criteria/criterion.ts'
import type { ClauseOutcome } from '../criteria/verdict.ts'
import { property, storedUnit } from '../measure/properties.ts'
import { boundsOf, extentOf, isBounded, type Known } from '../result/bounds.ts'

/**
 * A value that is reported without a limit, unrounded.
 * @param key of the result, null for a mean of several
 */
export function reportedValue(
  clause: Pick<Comparison, 'property'>,
  judged: Known,
  key: string | null,
): Pick<ClauseOutcome, 'value' | 'bounds' | 'compared' | 'unit' | 'decimals' | 'result'> {
  const { value } = judged
  return {
    value,
    ...shownBounds(judged),
    compared: value,
    unit: storedUnit(clause.property),
    decimals: property(clause.property).decimals,
    result: key,
  }
}

/** What a judged value may be, for its outcome to carry; nothing for a value that is known. */
export function shownBounds(judged: Known): Pick<ClauseOutcome, 'bounds'> {
  const bounds = isBounded(judged) ? boundsOf(extentOf(judged)) : undefined
  return bounds === undefined ? {} : { bounds: { low: bounds.low, high: bounds.high } }
}
