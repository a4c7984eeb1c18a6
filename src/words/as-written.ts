/** Quantities as their writer wrote them, with the signs of print for their units. */
import type { Quantity } from '../core/measure/units.ts'

/** A quantity as its writer wrote it, with the signs of print for the unit ("50 degC" as "50 °C"). */
export function written(quantity: Quantity): string {
  return printedUnits(quantity.written)
}

/** Captures of an ohm: its prefix, and the length that makes it a resistivity. */
const OHM = /(?<![A-Za-z])(k?)ohms?(?:[ .·]?(c?m))?(?![A-Za-z0-9])/g
const DEGREE = /(?<![A-Za-z])deg ?(?=[CF](?![A-Za-z0-9]))/g
const POWER = /(?<=(?<![A-Za-z])(?:mm|cm|m|in))[23](?![A-Za-z0-9])/g

/** A written quantity's text, or a unit alone, with the signs of print: "44.0 ohm m" as "44.0 Ω·m". */
export function printedUnits(text: string): string {
  return text
    .replace(
      OHM,
      (_, prefix: string, length?: string) => `${prefix}Ω${length === undefined ? '' : `·${length}`}`,
    )
    .replace(DEGREE, '°')
    .replace(POWER, (power) => (power === '2' ? '²' : '³'))
}
