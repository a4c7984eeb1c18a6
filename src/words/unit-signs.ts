/** Units as they are printed. */
import { printedUnits } from './as-written.ts'

/** Unit of a difference of values with that unit: per cents differ by points. */
export function differenceUnitOf(unit: string): string {
  return unit === '%' ? 'percentage points' : unit
}

/** The printed sign of a unit, stored or as a limit is written in. */
export function unitSign(unit: string): string {
  return unit === 'percentage points' ? 'points' : printedUnits(unit)
}
