/** The value of a clause that sets no limit on it, as its outcome carries it. */
import type { Comparison } from '../criteria/criterion.ts'
import type { ClauseOutcome } from '../criteria/verdict.ts'
import { property, storedUnit } from '../measure/properties.ts'
import type { Result } from '../result/result.ts'

/**
 * A value that is reported without a limit, unrounded.
 * @param key of the result, null for a mean of several
 */
export function reportedValue(
  clause: Pick<Comparison, 'property'>,
  { value }: Pick<Result, 'value'>,
  key: string | null,
): Pick<ClauseOutcome, 'value' | 'compared' | 'unit' | 'decimals' | 'result'> {
  return {
    value,
    compared: value,
    unit: storedUnit(clause.property),
    decimals: property(clause.property).decimals,
    result: key,
  }
}
