/** Numbers in words and as they stand on a page. */
import type { Figure } from '../core/criteria/reason.ts'
import { roundToStep, stepOfDecimals, withoutDust } from '../core/measure/rounding.ts'
import { printedUnits } from './as-written.ts'
import { MINUS, THIN_SPACE } from './signs.ts'
import { inSystem, type UnitSystem } from './unit-systems.ts'

/**
 * The digits of a number with fixed decimals and a hyphen for a minus: the one place that rounds for print. An
 * exact half goes to the even digit, as it does before a comparison, so that a value never reads otherwise than
 * it was judged; what rounds to nothing has no sign.
 * @param value in any unit
 * @param decimals below none for tens and hundreds
 */
export function fixedDigits(value: number, decimals: number): string {
  const text = (isPlain(value, decimals) ? value : roundToStep(value, stepOfDecimals(decimals))).toFixed(
    Math.max(0, decimals),
  )
  return /[1-9]/.test(text) ? text : text.replace('-', '')
}

/** Far from a half of the last digit binary and decimal rounding agree, and the former is faster by far. */
function isPlain(value: number, decimals: number): boolean {
  const scaled = Math.abs(value) * 10 ** decimals
  return !Number.isFinite(value) || (0 <= decimals && scaled < 1e6 && 1e-5 < Math.abs((scaled % 1) - 0.5))
}

/** A number with fixed decimals and a true minus, within a sentence: no sign at its thousands. */
export function plainNumber(value: number, decimals: number): string {
  return fixedDigits(value, decimals).replace('-', MINUS)
}

/** A number rounded for print as far as its digits tell: "95", "99.5", "0.0125". */
export function shortNumber(value: number, decimals: number): string {
  return String(Number(fixedDigits(value, decimals))).replace('-', MINUS)
}

/**
 * A number with fixed decimals and a true minus; at its thousands a thin space from 10 000 on, in US style a comma
 * from 1,000 on.
 */
export function number(value: number, decimals: number, units: UnitSystem = 'SI'): string {
  const [whole = '', fraction] = fixedDigits(Math.abs(value), decimals).split('.')
  const { from, sign } = THOUSANDS[units]
  const grouped = whole.length < from ? whole : whole.replace(/(?<=\d)(?=(\d{3})+$)/g, sign)
  const digits = fraction === undefined ? grouped : `${grouped}.${fraction}`
  return value < 0 && /[1-9]/.test(digits) ? MINUS + digits : digits
}

/** Digits from which a number is grouped, and the sign between its groups. */
const THOUSANDS = { SI: { from: 5, sign: THIN_SPACE }, US: { from: 4, sign: ',' } } as const

export function plural(count: number, one: string, many: string): string {
  return `${count} ${count === 1 ? one : many}`
}

/** "1 result", "3 results". */
export function countWords(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`
}

/**
 * A number and its unit with so many decimals and a true minus sign. Percentage points keep their full name
 * within a sentence.
 */
export function numberWords(value: number, decimals: number, unit: string, units: UnitSystem = 'SI'): string {
  const figure = inSystem({ value, decimals, unit }, units)
  const digits =
    units === 'US' ? number(figure.value, figure.decimals, units) : plainNumber(figure.value, figure.decimals)
  return figure.unit === '' ? digits : `${digits} ${printedUnits(figure.unit)}`
}

/** A figure with the decimals that it states. */
export function figureWords({ value, decimals, unit }: Figure, units: UnitSystem = 'SI'): string {
  return numberWords(value, decimals, unit, units)
}

/** A figure as compared with a limit, in the limit's unit; what the site prints stands behind it in brackets. */
export function comparedWords(figure: Figure, units: UnitSystem): string {
  const own = figureWords(figure)
  return inSystem(figure, units).unit === figure.unit ? own : `${own} (${figureWords(figure, units)})`
}

/** A value before rounding: all its digits where they are few, else three more than the comparison used. */
export function unroundedWords(value: number, decimals: number, unit: string): string {
  const text = String(withoutDust(value))
  const point = text.indexOf('.')
  const own = point < 0 ? 0 : text.length - point - 1
  return numberWords(value, Math.min(own, decimals + 3), unit)
}
