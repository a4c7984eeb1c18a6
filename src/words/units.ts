/** Values with their units, the printed signs of units, and both systems of them. */
import type { Result } from '../core/result/result.ts'
import { printedUnits } from './as-written.ts'
import { type BoundsToSay, boundsWords } from './bounds.ts'
import { fixedDigits, number } from './numbers.ts'
import { MINUS, NO_BREAK } from './signs.ts'
import { unitSign } from './unit-signs.ts'
import { inSystem, type UnitSystem } from './unit-systems.ts'

/** A value with its unit, which never breaks from it. */
export function quantity(value: number, decimals: number, unit: string, units: UnitSystem = 'SI'): string {
  const figure = inSystem({ value, decimals, unit }, units)
  const [digits, sign] = [number(figure.value, figure.decimals, units), unitSign(figure.unit)]
  return sign === '' ? digits : `${digits}${NO_BREAK}${sign.replaceAll(' ', NO_BREAK)}`
}

/** A value with its unit and sign, for differences: "+0.3 points". */
export function signed(value: number, decimals: number, unit: string, units: UnitSystem = 'SI'): string {
  return `${0 < Number(fixedDigits(value, decimals)) ? '+' : ''}${quantity(value, decimals, unit, units)}`
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
  units: UnitSystem = 'SI',
): string {
  const { bounds, censored, decimals, unit } = result
  const text = quantity(result.value, decimals, unit, units)
  if (censored === 'below' && (bounds?.low ?? 0) <= 0) return `<${NO_BREAK}${text}`
  return bounds === undefined ? text : boundsWords(bounds, decimals, unit, units)
}

/** A mass of material in both systems, the site's own first: "1450 t (1598 short tons)". */
export function massText(massT: number, units: UnitSystem): string {
  const decimals = massDecimals(massT)
  const tonnes = quantity(massT, decimals, 't')
  if (units === 'US') return `${quantity(massT, decimals, 't', 'US')} (${tonnes})`
  // Beside tonnes, short tons have the thousands sign of tonnes.
  const { value, decimals: own, unit } = inSystem({ value: massT, decimals, unit: 't' }, 'US')
  return `${tonnes} (${quantity(value, own, unit)})`
}

/** Decimals that a mass of material in tonnes is printed with. */
export function massDecimals(massT: number): number {
  return massT < 100 ? 1 : 0
}
