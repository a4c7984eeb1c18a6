/** Periods of a criterion in days. */
import type { Quantity } from '../../core/measure/units.ts'

const HOURS_A_DAY = 24

/** @param duration quantity of the kind duration, stored in hours */
export function daysOf(duration: Quantity): number {
  return duration.value / HOURS_A_DAY
}
