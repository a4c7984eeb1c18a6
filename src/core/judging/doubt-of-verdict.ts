/**
 * How far a value stands from its limit, measured by its own uncertainty: for information beside an outcome
 * as specified.
 */
import type { Uncertainty } from '../result/uncertainty.ts'
import type { Interval } from '../criteria/decision-rule.ts'
import { quantile } from '../statistics/distributions.ts'
import { withoutDust } from '../measure/rounding.ts'

/**
 * One-sided confidence that "would decide" means. Own choice: the risk of a guard band of 1.645 standard
 * uncertainties.
 */
const CONFIDENCE = 0.95

/**
 * Distance to the nearest end of what is admitted, above zero inside; and to which side of the limit it lies.
 */
export function marginOf(value: number, { low, high }: Interval): number {
  return withoutDust(Math.min(value - low, high - value))
}

/**
 * Batches in all that would tell the value from the limit, if their mean stayed where it is.
 * @returns null for a value on the limit, which no number of batches decides
 * Method: n with margin = z u / √n, z the normal quantile at 95 %, one side; rounded up.
 */
export function batchesToDecide(margin: number, { u }: Uncertainty): number | null {
  return margin === 0 ? null : Math.max(1, Math.ceil(withoutDust(((quantile(CONFIDENCE) * u) / margin) ** 2)))
}

/** Whether the uncertainty leaves no doubt worth a line on paper: beyond the guard of 95 %. */
export function isClear(value: number, interval: Interval, { u }: Uncertainty): boolean {
  return quantile(CONFIDENCE) * u < Math.abs(marginOf(value, interval))
}

/**
 * One line without a full stop, for instance "8.0 points clear, 2.9 standard uncertainties".
 * @param unit of value and limits; a difference of per cents is in points
 */
export function doubtWords(
  value: number,
  interval: Interval,
  uncertainty: Uncertainty,
  { unit, decimals }: { unit: string; decimals: number },
): string {
  const margin = marginOf(value, interval)
  const words = (amount: number) => `${amount.toFixed(decimals)} ${unit === '%' ? 'points' : unit}`.trim()
  const distance = `${words(Math.abs(margin))} ${margin < 0 ? 'beyond the limit' : 'clear of the limit'}`
  const times = Math.abs(margin) / uncertainty.u
  if (uncertainty.u === 0 || isClear(value, interval, uncertainty))
    return uncertainty.u === 0 ? distance : `${distance}, ${times.toFixed(1)} standard uncertainties`
  const measured =
    times < 1
      ? `less than its uncertainty of ${words(uncertainty.u)}`
      : `${times.toFixed(1)} standard uncertainties`
  const batches = batchesToDecide(margin, uncertainty)
  return `${distance}, ${measured}; ${batches === null ? 'no number of batches decides' : `the mean of ${batches} batches would decide`}`
}
