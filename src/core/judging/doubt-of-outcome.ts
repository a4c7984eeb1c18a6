/**
 * How far a value stands from its limit, measured by its own uncertainty: for information beside an outcome
 * as specified.
 */
import type { Admitted } from '../criteria/decision-rule.ts'
import type { DoubtOfOutcome } from '../criteria/verdict.ts'
import { withoutDust } from '../measure/rounding.ts'
import type { Uncertainty } from '../result/uncertainty.ts'
import { quantile } from '../statistics/distributions.ts'

/**
 * Standard uncertainties at a one-sided confidence of 95 %, which "would decide" means. Own choice: the risk
 * of a guard band of 1.645 standard uncertainties (JCGM 100:2008, table G.1, 90 % two-sided).
 */
const DECISIVE = quantile(0.95)

/**
 * How far a value stands from its limit, measured by its own uncertainty.
 * @param value in one unit with what the limit admits
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
 * Distance to the nearest end of what is admitted.
 * @param value in one unit with what the limit admits
 * @returns in that unit, at 12 significant digits: above zero inside, below zero outside
 */
export function marginOf(value: number, { low, high }: Admitted): number {
  return withoutDust(Math.min(value - low, high - value))
}

/**
 * Whether the uncertainty leaves no doubt worth a line on paper: beyond the guard of 95 %.
 * @param margin distance to the limit, of either sign, in the unit of the uncertainty
 * Note: the normal quantile, even where few degrees of freedom are known: own rule, for information.
 */
export function isClear(margin: number, { u }: Pick<Uncertainty, 'u'>): boolean {
  return DECISIVE * u < Math.abs(margin)
}

/**
 * Batches in all that would tell the value from the limit, if their mean stayed where it is.
 * @param margin distance to the limit, of either sign, in the unit of the uncertainty
 * @returns whole, at least 1; null for a value on the limit, which no number of batches decides
 * Note: the normal quantile, even where few degrees of freedom are known: own rule, for information.
 */
export function batchesToDecide(margin: number, { u }: Pick<Uncertainty, 'u'>): number | null {
  // Own choice: margin = z u / √n solved for n, as ASTM E122 sizes a sample.
  return margin === 0 ? null : Math.max(1, Math.ceil(withoutDust(((DECISIVE * u) / margin) ** 2)))
}
