/** Why a text is no quantity, and how to write it. */
import { acceptedSpellings, KINDS, type QuantityFault, type QuantityKind } from '../../core/measure/units.ts'
import type { Code } from '../diagnostics/codes.ts'
import { nearNames } from '../diagnostics/near-names.ts'
import type { FileReport } from '../diagnostics/report.ts'
import { isInCurlyQuotes } from '../yaml/curly-quotes.ts'
import { isRestOfNumber } from './comma-splits.ts'
import { shortened } from './schema-words.ts'

/** Reports why a text is no quantity. */
export function reportQuantity(
  pointer: string,
  fault: QuantityFault,
  kinds: readonly QuantityKind[],
  report: FileReport,
): void {
  if (report.written(pointer)?.block === true) {
    report.atKey(
      pointer,
      'yaml-block-mark',
      'the value begins with > or |, which YAML reads as the start of block text',
      `for a result below a bound write < ${KINDS[kinds[0] ?? 'fraction'].example}; otherwise put the value in quotes`,
    )
    return
  }
  if (fault.found === '' && isRestOfNumber(pointer, report)) return
  if (isInCurlyQuotes(fault.found, pointer, report)) return
  const { code, message, mend } = quantityFault(fault, kinds)
  report.at(pointer, code, message, mend)
}

/** A comma may group digits or begin the decimals: where both are possible the writer must say which. */
export function commaMend(readings: readonly string[]): string {
  const [first = '', second] = readings
  if (second !== undefined) return `write which of the two is meant: ${first}, or ${second}`
  return `${first.includes('.') ? 'write a decimal point' : 'write no sign between thousands'}: ${first}`
}

/** What to say of a text that is no quantity. */
export function quantityFault(
  found: QuantityFault,
  kinds: readonly QuantityKind[],
): { code: Code; message: string; mend: string } {
  const fault = { ...found, ...('found' in found && { found: shortened(found.found) }) }
  const { example } = KINDS[kinds[0] ?? 'fraction']
  const expected = `${kinds.map((each) => KINDS[each].title).join(' or ')} was expected`
  const units = unitsInWords(kinds)
  switch (fault.fault) {
    case 'decimal-comma':
      return {
        code: 'quantity-comma',
        message: `found the text "${fault.found}"; ${expected}`,
        mend: commaMend(fault.readings),
      }
    case 'no-unit':
      return {
        code: 'quantity-unit',
        message: `found "${fault.found}" without a unit; ${expected}`,
        mend: withOneOf(fault.found, kinds),
      }
    case 'ambiguous-ton':
      return {
        code: 'quantity-unit',
        message: '"ton" may be a short ton, a long ton or a tonne',
        mend: 'write t, short ton or long ton',
      }
    case 'wrong-kind':
      return {
        code: 'quantity-unit',
        message: `found the text "${fault.found}", which is ${withArticle(KINDS[fault.is].title)}; ${expected}`,
        mend:
          fault.is === 'lot-mass' || fault.is === 'batch-mass'
            ? poundsOfForce(fault, kinds) || withOneOf(fault.number, kinds)
            : withOneOf(fault.number, kinds),
      }
    case 'unknown-unit':
      return {
        code: 'quantity-unit',
        message: `found the text "${fault.found}", whose unit is not known; ${expected}`,
        mend:
          inchesMend(fault, kinds) ||
          otherSignMend(fault, kinds) ||
          nearNames(unitOf(fault), kinds.flatMap(acceptedSpellings)) ||
          `write one of ${units}`,
      }
    case 'out-of-range':
      return {
        code: 'quantity-range',
        message: `found "${fault.found}", larger than any reading`,
        mend: 'check the number and its unit',
      }
    case 'above':
      return {
        code: 'quantity',
        message: `found the text "${fault.found}"; a result above a bound cannot be stored`,
        mend: `write the value read, or, for a result below a bound, one such as < ${example}`,
      }
    case 'exponent':
      return {
        code: 'quantity',
        message: `found the text "${fault.found}", a number with an exponent; ${expected}`,
        mend: `write the number in plain digits, for instance ${example}`,
      }
    case 'not-a-number':
      return fault.found === ''
        ? {
            code: 'yaml-empty',
            message: `there is no value; ${expected}`,
            mend: `write a quantity such as ${example}, or remove the line`,
          }
        : {
            code: 'quantity',
            message: `found the text "${fault.found}"; ${expected}`,
            mend: `write a number and its unit, for instance ${example}`,
          }
  }
}

/** The signs that stand for inches on a drawing: ″, two primes, a straight quote. */
const INCHES = /^(?:"|″|”|''|′′|’’|in\.?|inch\.)$/i

function inchesMend(fault: { found: string; number: string }, kinds: readonly QuantityKind[]): string {
  return kinds.includes('length') && INCHES.test(unitOf(fault)) ? `for inches write ${fault.number} in` : ''
}

/** Signs of laboratories that a record writes otherwise, by kind: the sign, what it is called, and the unit to write. */
const OTHER_SIGNS: Readonly<Partial<Record<QuantityKind, readonly (readonly [RegExp, string, string])[]>>> = {
  fraction: [
    [/^ppm$/i, 'parts per million by mass', 'mg/kg'],
    [/^(?:(?:wt|mass|m|w)[ .-]*%|% ?(?:w\/w|m\/m|wt|by (?:mass|weight)))$/i, 'per cent by mass', '%'],
  ],
  density: [[/^g\/(?:cc|ccm|ml)$/i, 'grams per cubic centimetre', 'g/cm3']],
}

function otherSignMend(fault: { found: string; number: string }, kinds: readonly QuantityKind[]): string {
  const signs = kinds.flatMap((kind) => OTHER_SIGNS[kind] ?? [])
  const meant = signs.find(([sign]) => sign.test(unitOf(fault)))
  return meant === undefined ? '' : `for ${meant[1]} write ${fault.number} ${meant[2]}`
}

/** A press shows pounds, of force. */
function poundsOfForce(fault: { found: string; number: string }, kinds: readonly QuantityKind[]): string {
  return kinds.includes('force') && unitOf(fault) === 'lb'
    ? `for pounds of force write ${fault.number} lbf`
    : ''
}

function unitOf({ found: text, number }: { found: string; number: string }): string {
  return text.slice(text.indexOf(number) + number.length).trim()
}

function withArticle(title: string): string {
  return `${/^[aeiou]/i.test(title) ? 'an' : 'a'} ${title}`
}

/** How to give a number a unit of these kinds: "write 900 with one of t, short ton". */
export function withOneOf(number: string, kinds: readonly QuantityKind[]): string {
  const units = unitsInWords(kinds)
  return units.includes(',') ? `write ${number} with one of ${units}` : `write ${number} ${units}`
}

/** The units that quantities of these kinds may be written in. */
export function unitsInWords(kinds: readonly QuantityKind[]): string {
  return kinds
    .map((kind) =>
      KINDS[kind].units
        .map((unit) => unit.symbol)
        .filter(Boolean)
        .join(', '),
    )
    .join(', or ')
}
