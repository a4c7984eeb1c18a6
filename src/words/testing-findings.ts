/** What the checks found that hold samples and tests against other days, in words. */
import type { LotOnDay, TestingParams } from '../core/checks/testing-findings.ts'
import { date, period } from './dates.ts'
import type { FindingNames } from './finding-names.ts'
import { countWords, plural } from './numbers.ts'
import { propertyWords } from './property-names.ts'
import type { WordsOf } from './reason-words.ts'
import { listWords, sentence } from './sentences.ts'
import { writtenText } from './units.ts'
import { UNISSUED_LOT } from './withheld.ts'

export const TESTING_SENTENCES: WordsOf<TestingParams, [FindingNames]> = {
  'tested-outside-accreditation': ({ source, laboratory, recorded, results, lots }, names) => {
    const judged = `${countWords(lots, 'lot')} of ${names.source(source)} ${lots === 1 ? 'is' : 'are'} judged`
    return recorded
      ? `${countWords(results, 'result')} of ${names.laboratory(laboratory)}, on which ${judged}, ${results === 1 ? 'was' : 'were'} outside its recorded accreditation on the day of the test`
      : `No accreditation is on record for ${names.laboratory(laboratory)}, on whose results ${judged}`
  },
  'sampled-outside-production': ({ lot, sample, sampled, produced }, names) =>
    `Sample ${sample} of ${names.lot(lot)} was taken ${period(sampled.from, sampled.to)}, outside the production of the lot, ${period(produced.from, produced.to)}`,
  'mortars-cast-apart': ({ source, lots, of }, names) =>
    `${lots} of ${countWords(of, 'lot')} of ${names.source(source)} tested in mortar ${lots === 1 ? 'has' : 'have'} a test mortar cast on another day than its control`,
  'tested-on-closed-day': ({ source, laboratory, tests }, names) =>
    tests === 1
      ? `1 result of ${names.source(source)} is dated on a day when ${names.laboratory(laboratory)} was closed`
      : `${tests} results of ${names.source(source)} are dated on days when ${names.laboratory(laboratory)} was closed`,
  'equipment-unverified': ({ source, laboratory, mark, kind, tests, verified }, names) =>
    `${countWords(tests, 'result')} of ${names.source(source)} ${tests === 1 ? 'was' : 'were'} obtained at ${names.laboratory(laboratory)} with the ${kind} ${mark} ${
      verified === null
        ? 'before any verification of it on record'
        : `after its verification of ${date(verified)} had run out`
    }`,
}

export const TESTING_EVIDENCE: WordsOf<TestingParams, [FindingNames], string[]> = {
  'tested-outside-accreditation': ({ properties, first, last }, names) => [
    sentence(
      listWords(
        properties.map((key) => propertyWords({ property: key })),
        'and',
      ),
    ),
    testsWords(first, last, names),
  ],
  'sampled-outside-production': () => ['check the dates of the sample and of the production'],
  'mortars-cast-apart': ({ listed }, names) =>
    listed.map((one) =>
      one === null
        ? UNISSUED_LOT
        : `${names.number(one.lot)}: control ${one.control} cast ${plural(Math.abs(one.days), 'day', 'days')} ${0 < one.days ? 'before' : 'after'}`,
    ),
  'tested-on-closed-day': ({ listed }, names) => listed.map((one) => onDay(one, names)),
  'equipment-unverified': ({ writtenEvery, due, first, last }, names) => {
    const until =
      due !== null
        ? `it held until ${date(due)}; `
        : writtenEvery === null
          ? ''
          : `to be verified every ${writtenText(writtenEvery)}; `
    return [`${until}${testsWords(first, last, names)}`]
  },
}

function testsWords(first: LotOnDay | null, last: LotOnDay | null, names: FindingNames): string {
  const isOne = first?.lot === last?.lot && first?.day === last?.day
  return isOne
    ? `tested ${onDay(first, names)}`
    : `tested from ${onDay(first, names)} to ${onDay(last, names)}`
}

function onDay(one: LotOnDay | null, names: FindingNames): string {
  return one === null ? UNISSUED_LOT : `${date(one.day)} (${names.number(one.lot)})`
}
