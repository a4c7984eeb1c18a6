/** The units that a site prints: those that values are stored in, or US customary ones where the trade uses them. */
import type { Figure } from '../core/result/working.ts'

export type UnitSystem = 'SI' | 'US'

/**
 * Pounds are exact by definition (1959); a short ton is 2000 of them, so that a tonne is 1.102 311 short
 * tons.
 */
export const SHORT_TONS_IN_TONNE = 1000 / (2000 * 0.45359237)

/** Exact: the inch and the pound-force of core/measure/units.ts. */
const MM_IN_INCH = 25.4
const NEWTON_IN_POUND_FORCE = 4.4482216152605

/** What a stored unit is printed as instead. */
interface Instead {
  readonly unit: string
  readonly factor: number
  readonly offset?: number
  /** Decimals more than in the stored unit; below none the figure is rounded to tens or hundreds. */
  readonly decimals: number
}

/**
 * US customary forms: psi to the nearest ten where a strength has one decimal in MPa, resistivity in kΩ·cm as
 * US practice reports surface and bulk resistivity (common practice, no source).
 */
const US: Readonly<Record<string, Instead>> = {
  MPa: { unit: 'psi', factor: MM_IN_INCH ** 2 / NEWTON_IN_POUND_FORCE, decimals: -2 },
  kN: { unit: 'lbf', factor: 1000 / NEWTON_IN_POUND_FORCE, decimals: -2 },
  'ohm m': { unit: 'kohm cm', factor: 0.1, decimals: 1 },
  degC: { unit: 'degF', factor: 1.8, offset: 32, decimals: 0 },
  t: { unit: 'short tons', factor: SHORT_TONS_IN_TONNE, decimals: 0 },
  kPa: { unit: 'psi', factor: MM_IN_INCH ** 2 / NEWTON_IN_POUND_FORCE / 1000, decimals: 1 },
  mm2: { unit: 'in2', factor: 1 / MM_IN_INCH ** 2, decimals: 3 },
}

/** How figures of a stored unit are printed. */
export interface PrintedUnit {
  readonly unit: string
  readonly decimals: number
  readonly of: (stored: number) => number
}

/**
 * @param unit stored
 * @param decimals in the stored unit
 * @returns unit and decimals to print with; the stored ones where the system has no other. Below zero decimals
 * stand for tens and hundreds
 */
export function printedUnit(unit: string, decimals: number, units: UnitSystem): PrintedUnit {
  const instead = units === 'US' ? US[unit] : undefined
  if (instead === undefined) return { unit, decimals, of: (stored) => stored }
  const { factor, offset = 0 } = instead
  return {
    unit: instead.unit,
    decimals: decimals + instead.decimals,
    of: (stored) => stored * factor + offset,
  }
}

/** The same figure in the units of the site. */
export function inSystem({ value, decimals, unit }: Figure, units: UnitSystem): Figure {
  const printed = printedUnit(unit, decimals, units)
  return { value: printed.of(value), decimals: printed.decimals, unit: printed.unit }
}

/** Whether a system prints a stored unit as another. */
export function hasOther(unit: string, units: UnitSystem): boolean {
  return printedUnit(unit, 0, units).unit !== unit
}

/** A difference of temperatures has no zero point of its own. @param kelvins or degrees Celsius */
export function temperatureDifference(kelvins: number, units: UnitSystem): { value: number; unit: string } {
  return units === 'US' ? { value: kelvins * 1.8, unit: 'degF' } : { value: kelvins, unit: 'degC' }
}
