/** What the checks of completeness found, in words. */
import type { CompletenessParams, NumberedLot } from '../core/checks/completeness-findings.ts'
import { SLACK } from '../core/checks/sampling-plan.ts'
import { date, month } from './dates.ts'
import type { FindingNames } from './finding-names.ts'
import { countWords, number, numberWords, plural } from './numbers.ts'
import { propertyWords } from './property-names.ts'
import type { WordsOf } from './reason-words.ts'
import { listWords } from './sentences.ts'
import { writtenText } from './units.ts'
import { UNISSUED_LOT } from './withheld.ts'

export const COMPLETENESS_SENTENCES: WordsOf<CompletenessParams, [FindingNames]> = {
  'number-gap': ({ source, first, last, missing, apart }, names) =>
    missing === 1
      ? `No lot of ${names.source(source)} bears the number ${first}`
      : `No lot of ${names.source(source)} bears ${apart === 0 ? 'any of the' : 'any of'} ${missing} numbers ${apart === 0 ? 'from' : 'between'} ${first} ${apart === 0 ? 'to' : 'and'} ${last}`,
  'report-missing': ({ source, first, last, months }, names) =>
    months === 1
      ? `No report on ${names.source(source)} for ${month(first)} is on record`
      : `No report on ${names.source(source)} is on record for the ${months} months from ${month(first)} to ${month(last)}`,
  'report-late': ({ source, month: own, daysLate }, names) =>
    `The report on ${names.source(source)} for ${month(own)} came ${plural(daysLate, 'day', 'days')} late`,
  'sampled-behind-plan': ({ source, properties, looked, behind, writtenEvery }, names) =>
    `${behind} of ${plural(looked, 'lot', 'lots')} of ${names.source(source)} ${behind === 1 ? 'was' : 'were'} sampled less often for ${listWords(
      properties.map((key) => propertyWords({ property: key })),
      'and',
    )} than the sampling plan asks: one sample every ${listWords(writtenEvery.map(writtenText), 'or')}`,
  'balance-off': ({ source, off, of, percent }, names) =>
    `The material balance of ${names.source(source)} is off by more than ${number(percent, 0)} % of what was produced in ${off} of ${countWords(of, 'month')}`,
  'diversion-apart': ({ source, apart, of }, names) =>
    `The material balance of ${names.source(source)} and its ledger of diverted material differ in ${apart} of ${countWords(of, 'month')}`,
  'shipped-above-certified': ({ source, shippedT, certifiedT }, names) =>
    `More of ${names.source(source)} was shipped, ${numberWords(shippedT, 0, 't', names.units)}, than its certified lots hold, ${numberWords(certifiedT, 0, 't', names.units)}`,
  'certificate-unshipped': ({ lot, issued, days }, names) =>
    `No shipment of ${names.lot(lot)} is on record, ${days} days after its certificate of ${date(issued)}`,
}

export const COMPLETENESS_EVIDENCE: WordsOf<CompletenessParams, [FindingNames], string[]> = {
  'number-gap': ({ before, after }) => [
    `before it: ${numberedWords(before)}; after it: ${numberedWords(after)}`,
    'was the number given to a lot that is not on record, or not used? The source can list numbers not used, with the reason',
  ],
  'report-missing': ({ first, due }) => [`the one for ${month(first)} was due by ${date(due)}`],
  'report-late': ({ due, received }) => [`due by ${date(due)}, received ${date(received)}`],
  'sampled-behind-plan': ({ lots }, names) => [
    ...lots.map((one) =>
      one === null
        ? UNISSUED_LOT
        : `${names.number(one.lot)}: ${plural(one.samples, 'sample', 'samples')}, one for ${numberWords(one.tonnes, 0, 't', names.units)} and ${number(one.days, 1)} d`,
    ),
    `lots that exceed the plan by no more than ${number(100 * (SLACK - 1), 0)} % are passed over`,
  ],
  'balance-off': ({ listed, total }, names) => [
    ...listed.map(
      (one) =>
        `${monthAndSilo(one)}: ${accountedWords(one.difference, names)}; ${numberWords(one.produced, 0, 't', names.units)} produced`,
    ),
    `over all months: ${accountedWords(total, names)}`,
    'scales, moisture and the cut between two months make differences as well',
  ],
  'diversion-apart': ({ listed }, names) =>
    listed.map(
      (one) =>
        `${monthAndSilo(one)}: ${numberWords(one.balance, 0, 't', names.units)} diverted in the balance, ${numberWords(one.ledger, 0, 't', names.units)} in the ledger`,
    ),
  'shipped-above-certified': () => ['check the masses of the bills and the quantities of the lots'],
  'certificate-unshipped': () => ['is it in stock, or was it shipped under another number?'],
}

function numberedWords(lot: NumberedLot | null): string {
  return lot === null ? 'no lot that can be named' : `${lot.number}, sampled ${date(lot.sampled)}`
}

function monthAndSilo({
  month: own,
  silo,
}: {
  readonly month: string
  readonly silo: string | null
}): string {
  return silo === null ? month(own) : `${month(own)}, ${silo}`
}

/** Produced less what it became: what is left, or what was never produced. */
function accountedWords(difference: number, { units }: FindingNames): string {
  const mass = numberWords(Math.abs(difference), 0, 't', units)
  return difference < 0
    ? `${mass} more accounted for than produced`
    : `${mass} produced and not accounted for`
}
