/** What the checks found that ask how readings and results came about, in words. */
import type { IntegrityParams } from '../core/checks/integrity-findings.ts'
import { limitWords } from './limits.ts'
import { countWords, fixedDigits, plural, shortNumber } from './numbers.ts'
import { propertyWords } from './property-names.ts'
import type { WordsOf } from './reason-words.ts'
import { listWords } from './sentences.ts'
import { quantity } from './units.ts'
import { UNISSUED_LOT } from './withheld.ts'

export const INTEGRITY_SENTENCES: WordsOf<IntegrityParams> = {
  'bunched-at-limit': ({ source, property, age, limit, admitted, refused }) =>
    `Of ${countWords(admitted + refused, 'lot')} of ${source} close to the limit of ${propertyWords({ property })}${age === null ? '' : ` at ${age}`}, ${limitWords(limit)}, ${admitted === 1 ? 'one lies' : `${admitted} lie`} just inside it and ${refused === 0 ? 'none' : refused} just beyond`,
  'uneven-last-digits': ({ source, laboratory, readings, unit }) =>
    `The last digits of ${countWords(readings, 'reading')} in ${unit} of ${laboratory} on ${source} do not occur equally often`,
  'scatter-small': ({ source, laboratory, condition, percent, batches }) =>
    `Specimens of ${source} at ${laboratory} under ${condition} scatter by ${shortNumber(percent, 2)} % within a batch, over ${countWords(batches, 'batch')}`,
  'specimens-excluded': ({ source, excluded, specimens }) =>
    `${excluded} of ${countWords(specimens, 'specimen')} of ${source} were left out`,
  'age-left-out': ({ source, property, condition, age, later, lots, of }) =>
    `${lots} of ${countWords(of, 'lot')} of ${source} with the ${propertyWords({ property })} at ${later} under ${condition} ${lots === 1 ? 'has' : 'have'} none at ${age}`,
}

export const INTEGRITY_EVIDENCE: WordsOf<IntegrityParams, [], string[]> = {
  'bunched-at-limit': ({ edge, width, unit, decimals, expectedAdmitted, expectedRefused, ...found }) => [
    `within ${quantity(width, decimals + 1, unit)} of ${quantity(edge, decimals + 1, unit)}, where the outcome changes before rounding; ${shortNumber(expectedAdmitted, 1)} and ${shortNumber(expectedRefused, 1)} are expected by a normal density fitted to the other lots of ${found.lots}`,
    `so many inside, or more, come about by chance in ${chance(found.probability)} of such sources`,
    divertedWords(found.diverted),
  ],
  'uneven-last-digits': ({ counts, step, unit, probability }) => [
    `digits 0 to 9, in steps of ${shortNumber(step, 4)} ${unit}: ${counts.join(', ')}`,
    `counts as uneven as these come about by chance in ${chance(probability)} of cases; ask how the device is read and rounded`,
  ],
  'scatter-small': ({ comparedPercent, degreesOfFreedom, probability }) => [
    `half of what the range rule of the method stands for is ${shortNumber(comparedPercent, 2)} %; a scatter as small, with ${degreesOfFreedom} degrees of freedom, comes about by chance in ${chance(probability)} of cases where that were true`,
    'ask for the bench sheets and the print-outs of the machine',
  ],
  'specimens-excluded': ({ listed }) =>
    listed.map((one) => (one === null ? UNISSUED_LOT : `${one.lot}: ${one.reason}`)),
  'age-left-out': ({ listed, lots }) => [
    `${listWords(
      listed.map((lot) => lot ?? UNISSUED_LOT),
      'and',
    )}${listed.length < lots ? ` and ${plural(lots - listed.length, 'other', 'others')}` : ''}`,
    'was the age not tested, or not entered?',
  ],
}

function chance(probability: number): string {
  return probability < 0.0001 ? 'less than 0.01 %' : `${fixedDigits(100 * probability, 2)} %`
}

/** Material that never became a lot is missing beyond the limit, which looks the same. */
function divertedWords(diverted: number): string {
  return diverted === 0
    ? 'diverted failing lots also cause this; none is on record'
    : `diverted failing lots also cause this; ${diverted === 1 ? 'one is' : `${diverted} are`} on record`
}
