/** Limits and values in words, for reasons and for proof-reading. */
import { type Limit, type Operator, EVERY_CLASS, partsOfClass } from '../core/criteria/criterion.ts'
import { withoutDust } from '../core/measure/rounding.ts'
import type { Quantity } from '../core/measure/units.ts'

/** "at least 75 %", with the limit's own digits. */
export function limitWords(operator: Operator, quantities: readonly Quantity[]): string {
  const [first, second] = quantities.map((quantity) => quantity.written)
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

/**
 * The quantities that hold for a class, or for a category it is made of; undefined where the limit does not
 * speak of it.
 */
export function quantitiesFor(limit: Limit, lotClass: string | null): readonly Quantity[] | undefined {
  if (Object.hasOwn(limit.byClass, EVERY_CLASS)) return limit.byClass[EVERY_CLASS]
  const named =
    lotClass === null ? undefined : partsOfClass(lotClass).find((part) => Object.hasOwn(limit.byClass, part))
  return named === undefined ? undefined : limit.byClass[named]
}

/** "at most 6.0 % for class F, 10.0 % for class N", several limits joined by "and". */
export function limitsByClass(limits: readonly Limit[]): string {
  return listWords(limits.filter((limit) => limit.operator !== 'report').map(limitByClass), 'and')
}

function limitByClass({ operator, byClass }: Limit): string {
  return Object.entries(byClass)
    .map(
      ([name, quantities]) =>
        `${limitWords(operator, quantities)}${name === EVERY_CLASS ? '' : ` for class ${name}`}`,
    )
    .join(', ')
}

/**
 * Limits as they hold for one class, joined by "and"; of a limit that does not speak of it, the first
 * class's.
 */
export function limitsForClass(limits: readonly Limit[], lotClass: string | null): string {
  return listWords(
    limits.map((limit) =>
      limitWords(limit.operator, quantitiesFor(limit, lotClass) ?? Object.values(limit.byClass)[0] ?? []),
    ),
    'and',
  )
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
