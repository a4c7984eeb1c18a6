/** What the checks found that hold samples and tests against other days, in words. */
import type { LotOnDay, TestingParams } from '../core/checks/testing-findings.ts'
import { printedUnits } from './as-written.ts'
import { date, period } from './dates.ts'
import { countWords, plural } from './numbers.ts'
import { propertyWords } from './property-names.ts'
import type { WordsOf } from './reason-words.ts'
import { listWords, sentence } from './sentences.ts'
import { UNISSUED_LOT } from './withheld.ts'

export const TESTING_SENTENCES: WordsOf<TestingParams> = {
  'tested-outside-accreditation': ({ source, laboratory, recorded, results, lots }) =>
    recorded
      ? `${countWords(results, 'result')} that ${judgedLots(lots, source)} on ${results === 1 ? 'lies' : 'lie'} outside the recorded accreditation of ${laboratory} on the day of the test`
      : `No accreditation of ${laboratory} is on record, whose results ${judgedLots(lots, source)} on`,
  'sampled-outside-production': ({ lot, sample, sampled, produced }) =>
    `Sample ${sample} of ${lot} was taken ${period(sampled.from, sampled.to)}, and the lot was produced ${period(produced.from, produced.to)}`,
  'mortars-cast-apart': ({ source, lots, of }) =>
    `${lots} of ${countWords(of, 'lot')} of ${source} with mortars ${lots === 1 ? 'has one' : 'have one'} cast on another day than its control`,
  'tested-on-closed-day': ({ source, laboratory, tests }) =>
    `${countWords(tests, 'result')} of ${source} ${tests === 1 ? 'is' : 'are'} dated on days on which ${laboratory} was closed`,
  'equipment-unverified': ({ source, laboratory, mark, kind, tests, verified }) =>
    `${countWords(tests, 'result')} of ${source} ${tests === 1 ? 'was' : 'were'} obtained at ${laboratory} with the ${kind} ${mark} ${
      verified === null
        ? 'before any verification of it on record'
        : `after its verification of ${date(verified)} had run out`
    }`,
}

export const TESTING_EVIDENCE: WordsOf<TestingParams, [], string[]> = {
  'tested-outside-accreditation': ({ properties, first, last }) => [
    sentence(
      listWords(
        properties.map((key) => propertyWords({ property: key })),
        'and',
      ),
    ),
    `tests from ${onDay(first)} to ${onDay(last)}`,
  ],
  'sampled-outside-production': () => ['check the dates of the sample and of the production'],
  'mortars-cast-apart': ({ listed }) =>
    listed.map((one) =>
      one === null
        ? UNISSUED_LOT
        : `${one.lot}: control ${one.control} cast ${plural(Math.abs(one.days), 'day', 'days')} ${0 < one.days ? 'before' : 'after'}`,
    ),
  'tested-on-closed-day': ({ listed }) => listed.map(onDay),
  'equipment-unverified': ({ writtenEvery, first, last }) => [
    `its interval is ${printedUnits(writtenEvery)}; tests from ${onDay(first)} to ${onDay(last)}`,
  ],
}

function onDay(one: LotOnDay | null): string {
  return one === null ? UNISSUED_LOT : `${date(one.day)} (${one.lot})`
}

function judgedLots(lots: number, source: string): string {
  return `${countWords(lots, 'lot')} of ${source} ${lots === 1 ? 'is' : 'are'} judged`
}
