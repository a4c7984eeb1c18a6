/** Limits in words, and with the signs of print. */
import { EVERY_CLASS, type Limit, type Operator } from '../core/criteria/criterion.ts'
import { statedLimit, type StatedLimit } from '../core/criteria/limits-for-class.ts'
import { printedUnits } from './as-written.ts'
import { listWords } from './sentences.ts'
import { NO_BREAK } from './signs.ts'
import { writtenText } from './units.ts'

const LIMIT_SIGNS: Readonly<Record<Operator, string>> = {
  'at-least': '≥',
  'at-most': '≤',
  above: '>',
  below: '<',
  between: '',
  'magnitude-at-most': '±',
  report: '',
}

/** A limit with its own digits: "≥ 75 %", "± 5 points", "10 to 20 %". */
export function limitText({ operator, written }: StatedLimit): string {
  if (operator === 'report') return 'to be reported'
  const texts = written.map((text) =>
    writtenText(text).replace('percentage points', 'points').replace('percentage point', 'point'),
  )
  if (operator === 'between') return texts.join(' to ')
  return `${LIMIT_SIGNS[operator]}${NO_BREAK}${texts[0] ?? ''}`
}

/** "at least 75 %", with the limit's own digits. */
export function limitWords({ operator, written }: StatedLimit): string {
  const [first, second] = written.map(printedUnits)
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

/** "at most 6.0 % for class F, at most 10.0 % for class N", several limits joined by "and". */
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
