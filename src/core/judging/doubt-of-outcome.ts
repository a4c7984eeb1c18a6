/**
 * How far a value stands from its limit, measured by its own uncertainty: for information beside an outcome
 * as specified.
 */
import type { Admitted } from '../criteria/decision-rule.ts'
import type { DoubtOfOutcome } from '../criteria/outcome.ts'
import { withoutDust } from '../measure/rounding.ts'
import type { Uncertainty } from '../result/uncertainty.ts'
import { quantile } from '../statistics/distributions.ts'

/**
 * Standard uncertainties at a one-sided confidence of 95 %, which "would decide" means. Own choice: the risk
 * of a guard band of 1.645 standard uncertainties.
 */
const DECISIVE = quantile(0.95)

/**
 * @param value and what the limit admits, in one unit
 * @param measure standard uncertainty in that unit, and the decimals to print it with
 */
export function doubtOfOutcome(
  value: number,
  admits: Admitted,
  measure: Pick<DoubtOfOutcome, 'u' | 'unit' | 'decimals'>,
): DoubtOfOutcome {
  const margin = marginOf(value, admits)
  return {
    margin,
    ...measure,
    clear: isClear(margin, measure),
    batches: batchesToDecide(margin, measure),
  }
}

/**
 * Distance to the nearest end of what is admitted, above zero inside; and to which side of the limit it lies.
 */
export function marginOf(value: number, { low, high }: Admitted): number {
  return withoutDust(Math.min(value - low, high - value))
}

/** Whether the uncertainty leaves no doubt worth a line on paper: beyond the guard of 95 %. */
export function isClear(margin: number, { u }: Pick<Uncertainty, 'u'>): boolean {
  return DECISIVE * u < Math.abs(margin)
}

/**
 * Batches in all that would tell the value from the limit, if their mean stayed where it is.
 * @returns null for a value on the limit, which no number of batches decides
 * Method: n with margin = z u / √n, z the normal quantile at 95 %, one side; rounded up.
 */
export function batchesToDecide(margin: number, { u }: Pick<Uncertainty, 'u'>): number | null {
  return margin === 0 ? null : Math.max(1, Math.ceil(withoutDust(((DECISIVE * u) / margin) ** 2)))
}
