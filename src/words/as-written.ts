/** Quantities as their writer wrote them, with the signs of print for their units. */
import type { Quantity } from '../core/measure/units.ts'

/** Signs of print by the unit's plain letters. */
export const UNIT_SIGNS: Readonly<Record<string, string>> = {
  degC: '°C',
  degF: '°F',
  'ohm m': 'Ω·m',
  kohm: 'kΩ',
  ohm: 'Ω',
  m2: 'm²',
  mm2: 'mm²',
  cm3: 'cm³',
  m3: 'm³',
}

/** A quantity as its writer wrote it, with the signs of print for the unit ("50 degC" as "50 °C"). */
export function written(quantity: Quantity): string {
  return printedUnits(quantity.written)
}

/** A written quantity's text with the signs of print. */
export function printedUnits(text: string): string {
  return text.replace(/\b(?:ohm m|degC|degF|kohm|ohm|mm2|m2|cm3|m3)\b/g, (unit) => UNIT_SIGNS[unit] ?? unit)
}
