/** What the checks found that ask how readings and results came about, in words. */
import type { IntegrityParams } from '../core/checks/integrity-findings.ts'
import type { FindingNames } from './finding-names.ts'
import { limitWords } from './limits.ts'
import { firstLots, lotNumbers, testWords } from './named-tests.ts'
import { countWords, fixedDigits, shortNumber } from './numbers.ts'
import { propertyWords } from './property-names.ts'
import type { WordsOf } from './reason-words.ts'
import { quantity, writtenText } from './units.ts'
import { unitSign } from './unit-signs.ts'
import { UNISSUED_LOT } from './withheld.ts'

export const INTEGRITY_SENTENCES: WordsOf<IntegrityParams, [FindingNames]> = {
  'bunched-at-limit': ({ source, limit, admitted, refused, ...test }, names) =>
    `Of ${countWords(admitted + refused, 'lot')} of ${names.source(source)} close to the limit of ${limitWords(limit)} for ${testWords(test, names)}, ${admitted === 1 ? 'one lies' : `${admitted} lie`} just inside it and ${refused === 0 ? 'none' : refused} just beyond`,
  'uneven-last-digits': ({ source, laboratory, readings, unit }, names) =>
    `The last digits of ${countWords(readings, 'reading')} in ${unitSign(unit)} on ${names.source(source)} at ${names.laboratory(laboratory)} do not occur equally often`,
  'scatter-small': ({ source, laboratory, condition, percent, batches }, names) =>
    `Specimens of ${names.source(source)} at ${names.laboratory(laboratory)} (${names.condition(condition)}) scatter by only ${shortNumber(percent, 2)} % within a batch, over ${batches === 1 ? '1 batch' : `${batches} batches`}`,
  'specimens-excluded': ({ source, excluded, specimens }, names) =>
    `${excluded} of ${countWords(specimens, 'specimen')} of ${names.source(source)} were left out`,
  'lots-alike': ({ source, lots, values }, names) =>
    `All ${values.length} measured values of ${lots.length} lots of ${names.source(source)} are the same, to the last digit: ${lotNumbers(lots, names)}`,
  retested: ({ source, retests, tests, lots }, names) =>
    `${retests} of ${countWords(tests, 'mortar test')} of ${names.source(source)} ${retests === 1 ? 'is a retest' : `are retests, of ${countWords(lots, 'lot')}`}`,
  'age-left-out': ({ source, later, age, lots, of, ...test }, names) =>
    `${lots} of ${countWords(of, 'lot')} of ${names.source(source)} with a ${testWords({ ...test, age: later }, names)} ${lots === 1 ? 'has' : 'have'} none at ${age}`,
}

export const INTEGRITY_EVIDENCE: WordsOf<IntegrityParams, [FindingNames], string[]> = {
  'bunched-at-limit': (
    { edge, width, unit, decimals, expectedAdmitted, expectedRefused, ...found },
    { units },
  ) => [
    `within ${quantity(width, decimals + 1, unit === '%' ? 'points' : unit, units)}, half the standard deviation, of ${quantity(edge, decimals + 1, unit, units)}, where the outcome changes before rounding; a normal density fitted to the other lots of ${found.lots} leads to expect ${shortNumber(expectedAdmitted, 1)} inside and ${shortNumber(expectedRefused, 1)} beyond`,
    `so many inside, or more, come about by chance in ${chance(found.probability)} of such sources`,
    divertedWords(found.diverted),
  ],
  'uneven-last-digits': ({ counts, step, unit, probability }) => [
    `digits 0 to 9, in steps of ${shortNumber(step, 4)} ${unitSign(unit)}: ${counts.join(', ')}`,
    `counts as uneven as these come about by chance in ${chance(probability)} of cases; ask how the device is read and rounded`,
  ],
  'scatter-small': ({ comparedPercent, degreesOfFreedom, probability }) => [
    `half of what the range rule of the method stands for is ${shortNumber(comparedPercent, 2)} %; were that the true scatter, one as small as this, with ${degreesOfFreedom} degrees of freedom, would come about by chance in ${chance(probability)} of cases`,
    'ask for the bench sheets and the print-outs of the machine',
  ],
  'specimens-excluded': ({ listed }, names) =>
    listed.map((one) => (one === null ? UNISSUED_LOT : `${names.number(one.lot)}: ${one.reason}`)),
  'lots-alike': ({ values, expected }) => [
    values
      .map(({ property, written }) => `${propertyWords({ property })} ${writtenText(written)}`)
      .join(', '),
    `about ${shortNumber(expected, 4)} pairs of lots are expected to agree so by chance, if lots do not resemble their neighbours: was one record made from the other?`,
  ],
  retested: ({ listed, lots }, names) => [
    firstLots(listed, lots, names),
    'a retest replaces the test that it names and no other; both stay on record',
  ],
  'age-left-out': ({ listed, lots }, names) => [
    firstLots(listed, lots, names),
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
