/** Units as they are printed. */
import { printedUnits } from './as-written.ts'

/** The printed sign of a unit, stored or as a limit is written in. */
export function unitSign(unit: string): string {
  return unit === 'percentage points' ? 'points' : printedUnits(unit)
}
