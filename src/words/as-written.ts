/** Quantities as their writer wrote them, with the signs of print for their units. */
import type { Quantity } from '../core/measure/units.ts'

const SIGNS: readonly (readonly [RegExp, string])[] = [
  [/\bdegC\b/, '°C'],
  [/\bdegF\b/, '°F'],
  [/\bkohm\b/, 'kΩ'],
  [/\bohm\b/, 'Ω'],
  [/\bm2\b/, 'm²'],
  [/\bmm2\b/, 'mm²'],
  [/\bcm3\b/, 'cm³'],
  [/\bm3\b/, 'm³'],
]

/** A quantity as its writer wrote it, with the signs of print for the unit ("50 degC" as "50 °C"). */
export function written(quantity: Quantity): string {
  return printedUnits(quantity.written)
}

/** A written quantity's text with the signs of print. */
export function printedUnits(text: string): string {
  return SIGNS.reduce((current, [pattern, sign]) => current.replace(pattern, sign), text)
}
