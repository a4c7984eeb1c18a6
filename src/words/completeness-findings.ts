/** What the checks of completeness found, in words. */
import type { CompletenessParams, NumberedLot } from '../core/checks/completeness-findings.ts'
import { printedUnits } from './as-written.ts'
import { date, month } from './dates.ts'
import { number, plural } from './numbers.ts'
import { propertyWords } from './property-names.ts'
import type { WordsOf } from './reason-words.ts'
import { listWords } from './sentences.ts'
import { UNISSUED_LOT } from './withheld.ts'

export const COMPLETENESS_SENTENCES: WordsOf<CompletenessParams> = {
  'number-gap': ({ source, first, last, missing }) =>
    missing === 1
      ? `No lot of ${source} bears the number ${first}`
      : `No lot of ${source} bears the ${missing} numbers from ${first} to ${last}`,
  'report-missing': ({ source, first, last, months }) =>
    months === 1
      ? `No report of ${source} for ${month(first)} is on record`
      : `No report of ${source} is on record for the ${months} months from ${month(first)} to ${month(last)}`,
  'report-late': ({ source, month: own, daysLate }) =>
    `The report of ${source} for ${month(own)} came ${plural(daysLate, 'day', 'days')} late`,
  'sampled-behind-plan': ({ source, properties, looked, behind, writtenEvery }) =>
    `${behind} of ${plural(looked, 'lot', 'lots')} of ${source} have fewer samples for ${listWords(
      properties.map((key) => propertyWords({ property: key })),
      'and',
    )} than one every ${listWords(writtenEvery.map(printedUnits), 'or')}, as its sampling plan says`,
  'certificate-unshipped': ({ lot, issued, days }) =>
    `Nothing of ${lot} is recorded as shipped ${days} days after its certificate of ${date(issued)}`,
}

export const COMPLETENESS_EVIDENCE: WordsOf<CompletenessParams, [], string[]> = {
  'number-gap': ({ before, after }) => [
    `before it: ${numberedWords(before)}; after it: ${numberedWords(after)}`,
    'was the number given to a lot that is not on record, or not used? The source can list numbers not used, with the reason',
  ],
  'report-missing': ({ first, due }) => [`that for ${month(first)} was due by ${date(due)}`],
  'report-late': ({ due, received }) => [`due by ${date(due)}, received ${date(received)}`],
  'sampled-behind-plan': ({ lots }) =>
    lots.map((one) =>
      one === null
        ? UNISSUED_LOT
        : `${one.lot}: ${plural(one.samples, 'sample', 'samples')}, one for ${number(one.tonnes, 0)} t and ${number(one.days, 1)} d`,
    ),
  'certificate-unshipped': () => ['is it in stock, or was it shipped under another number?'],
}

function numberedWords(lot: NumberedLot | null): string {
  return lot === null ? 'no lot that can be named' : `${lot.number}, sampled ${date(lot.sampled)}`
}
