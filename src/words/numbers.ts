/** Numbers in words and as they stand on a page. */
import type { Figure } from '../core/criteria/reason.ts'
import { withoutDust } from '../core/measure/rounding.ts'
import { printedUnits } from './as-written.ts'
import { MINUS, THIN_SPACE } from './signs.ts'

/** A number with fixed decimals, true minus, and a thin space at each thousand from 10 000 on. */
export function number(value: number, decimals: number): string {
  const [whole = '', fraction] = Math.abs(value).toFixed(decimals).split('.')
  const grouped = whole.length < 5 ? whole : whole.replace(/(?<=\d)(?=(\d{3})+$)/g, THIN_SPACE)
  const digits = fraction === undefined ? grouped : `${grouped}.${fraction}`
  return value < 0 && /[1-9]/.test(digits) ? MINUS + digits : digits
}

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
export function numberWords(value: number, decimals: number, unit: string): string {
  const number = value.toFixed(decimals).replace('-', '−')
  return unit === '' ? number : `${number} ${printedUnits(unit)}`
}

/** A figure with the decimals that it states. */
export function figureWords({ value, decimals, unit }: Figure): string {
  return numberWords(value, decimals, unit)
}

/** A value before rounding: all its digits where they are few, else three more than the comparison used. */
export function unroundedWords(value: number, decimals: number, unit: string): string {
  const text = String(withoutDust(value))
  const point = text.indexOf('.')
  const own = point < 0 ? 0 : text.length - point - 1
  return numberWords(value, Math.min(own, decimals + 3), unit)
}
