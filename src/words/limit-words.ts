/** Limits and values in words, for reasons and for proof-reading. */
import { EVERY_CLASS, type Limit } from '../core/criteria/criterion.ts'
import { type StatedLimit, statedLimit } from '../core/criteria/limits-for-class.ts'
import type { Figure } from '../core/criteria/reason.ts'
import { withoutDust } from '../core/measure/rounding.ts'

/** "at least 75 %", with the limit's own digits. */
export function limitWords({ operator, written: [first, second] }: StatedLimit): string {
  switch (operator) {
    case 'at-least':
      return `at least ${first}`
    case 'at-most':
      return `at most ${first}`
    case 'above':
      return `above ${first}`
    case 'below':
      return `below ${first}`
    case 'between':
      return `between ${first} and ${second}`
    case 'magnitude-at-most':
      return `at most ${first} in magnitude`
    case 'report':
      return 'to be reported'
  }
}

/** "at least 75 % and at most 110 %". */
export function limitsWords(limits: readonly StatedLimit[]): string {
  return listWords(limits.map(limitWords), 'and')
}

/** "at most 6.0 % for class F, 10.0 % for class N", several limits joined by "and". */
export function limitsByClass(limits: readonly Limit[]): string {
  return listWords(limits.filter((limit) => limit.operator !== 'report').map(limitByClass), 'and')
}

function limitByClass({ operator, byClass }: Limit): string {
  return Object.entries(byClass)
    .map(
      ([name, quantities]) =>
        `${limitWords(statedLimit({ operator, quantities }))}${name === EVERY_CLASS ? '' : ` for class ${name}`}`,
    )
    .join(', ')
}

/** "1 result", "3 results". */
export function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`
}

/** A number and its unit with so many decimals and a true minus sign. */
export function numberWords(value: number, decimals: number, unit: string): string {
  const number = value.toFixed(decimals).replace('-', '−')
  return unit === '' ? number : `${number} ${unit}`
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

/** "a, b or c", "a, b and c". */
export function listWords(items: readonly string[], last: 'and' | 'or'): string {
  return items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} ${last} ${items.at(-1)}`
}
