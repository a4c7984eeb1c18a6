/** Values with their units, the printed signs of units, and both systems of them. */
import { roundToStep } from '../core/measure/rounding.ts'
import type { Result } from '../core/result/result.ts'
import { printedUnits } from './as-written.ts'
import { type BoundsToSay, boundsWords } from './bounds.ts'
import { fixedDigits, number } from './numbers.ts'
import { MINUS, NO_BREAK } from './signs.ts'
import { unitSign } from './unit-signs.ts'

/** A value with its unit, which never breaks from it. */
export function quantity(value: number, decimals: number, unit: string): string {
  const sign = unitSign(unit)
  return sign === '' ? number(value, decimals) : `${number(value, decimals)}${NO_BREAK}${sign}`
}

/** A value with its unit and sign, for differences: "+0.3 points". */
export function signed(value: number, decimals: number, unit: string): string {
  return `${0 < Number(fixedDigits(value, decimals)) ? '+' : ''}${quantity(value, decimals, unit)}`
}

/** A quantity's written text with the signs of print and a space that does not break. */
export function writtenText(text: string): string {
  return printedUnits(text)
    .replace(/^-/, MINUS)
    .replace(/(?<!^1 )short ton$/, 'short tons')
    .replace(/(?<=\d) (?=\S)/g, NO_BREAK)
}

/**
 * The value of a result as reported or computed; "< 0.1 %" where it lies below the limit of determination, and
 * "between 96.6 and 97.1 %" where it is known only to lie there.
 */
export function resultText(
  result: Pick<Result, 'value' | 'decimals' | 'unit' | 'censored'> & { readonly bounds?: BoundsToSay },
): string {
  const { bounds, censored, decimals, unit } = result
  const text = quantity(result.value, decimals, unit)
  if (censored === 'below' && (bounds?.low ?? 0) <= 0) return `<${NO_BREAK}${text}`
  return bounds === undefined ? text : boundsWords(bounds, decimals, unit)
}

/**
 * Pounds are exact by definition (1959); a short ton is 2000 of them, so that a tonne is 1.102 311 short
 * tons.
 */
export const SHORT_TONS_IN_TONNE = 1000 / (2000 * 0.45359237)

/** 1 MPa in pounds-force per square inch, from the exact inch and pound-force of core/measure/units.ts. */
const PSI_IN_MPA = (25.4 * 25.4) / 4.4482216152605

/** A mass of material in both systems, the site's own first: "1450 t (1598 short tons)". */
export function massText(massT: number, units: 'SI' | 'US'): string {
  const tonnes = quantity(massT, massT < 100 ? 1 : 0, 't')
  const shortTons = `${number(massT * SHORT_TONS_IN_TONNE, massT < 100 ? 1 : 0)}${NO_BREAK}short${NO_BREAK}tons`
  return units === 'SI' ? `${tonnes} (${shortTons})` : `${shortTons} (${tonnes})`
}

/** The same value in US customary units where the trade uses them; null elsewhere. */
export function usText(value: number, unit: string): string | null {
  if (unit === 'MPa') return `${number(roundToStep(value * PSI_IN_MPA, 10), 0)}${NO_BREAK}psi`
  if (unit === 'ohm m') return `${number(value * 100, 0)}${NO_BREAK}Ω·cm`
  return null
}
