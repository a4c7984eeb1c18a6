/** What the checks of an agency's results found, in words. */
import type { AgencyFindingParams } from '../core/checks/agency-findings.ts'
import { chanceWords, differenceWords, spreadWords } from './agency.ts'
import type { FindingNames } from './finding-names.ts'
import { period } from './dates.ts'
import { limitsWords, limitWords } from './limits.ts'
import { firstLots, testWords } from './named-tests.ts'
import { countWords, figureWords, fixedDigits, number } from './numbers.ts'
import type { WordsOf } from './reason-words.ts'

export const AGENCY_SENTENCES: WordsOf<AgencyFindingParams, [FindingNames]> = {
  'split-beyond-limit': ({ lot, sample, difference, limit, decimals, ...test }, names) =>
    `The agency’s ${testWords(test, names)} of split ${sample} of ${names.lot(lot)} is ${spreadWords(test.property, Math.abs(difference), decimals, names.units)} ${
      difference < 0 ? 'below' : 'above'
    } the producer’s; two laboratories differ by more than ${spreadWords(test.property, limit, decimals, names.units)} in about one pair of twenty`,
  'agency-other-side': ({ lot, kind, sample, meets, limits, ...test }, names) => {
    const figure = (value: number) => figureWords({ ...test, value }, names.units)
    const [own, other] = meets === 'producer' ? ['meets', 'would not'] : ['does not meet', 'would']
    const limit = limits.length === 1 ? 'the limit of' : 'the limits of'
    return `The ${testWords(test, names)} of ${names.lot(lot)} is ${figure(test.producer)} by the producer, which ${own} ${limit} ${limitsWords(limits.map((one) => one.limit))}, and ${figure(test.agency)} by the agency’s ${KINDS[kind]} ${sample}, which ${other}`
  },
  'split-bias': ({ source, n, mean, decimals, ...test }, names) =>
    `The agency’s splits of ${names.source(source)} lie to one side of the producer’s results: ${testWords(test, names)}, mean difference ${differenceWords(test.property, mean, decimals, names.units)} over ${n} pairs`,
  'independent-differs': ({ source, differ, agency, producer, level, ...test }, names) =>
    `The agency’s ${agency} independent samples of ${names.source(source)} and the producer’s ${producer} lots of the same period differ in ${DIFFER[differ]} at the ${number(100 * level, 0)} % level: ${testWords(test, names)}`,
  'producer-never-fails': ({ source, limit, agency, agencyFailed, producer, ...test }, names) =>
    `${agencyFailed} of the agency’s ${countWords(agency, 'result')} for ${testWords(test, names)} of ${names.source(source)} would not meet the limit of ${limitWords(limit)}, while ${producer === 1 ? 'the one lot' : `all ${producer} lots`} that the producer reports ${producer === 1 ? 'meets' : 'meet'} it`,
  'verification-behind': ({ source, kind, from, to, planned, taken }, names) =>
    `${taken === 0 ? 'None' : taken} of the ${planned} ${PLANNED[kind]} of ${names.source(source)} planned for ${period(from, to)} ${taken === 1 ? 'is' : 'are'} on record`,
  'no-independent-sample': ({ source, splits }, names) =>
    `${splits === 1 ? `The only sample that the agency has of ${names.source(source)} is a split` : `All ${splits} samples that the agency has of ${names.source(source)} are splits`} of the producer’s; no independent sample is on record`,
  'custody-not-stated': ({ source, without, samples }, names) => {
    const of = `of ${names.source(source)}`
    if (samples === 1) return `The agency’s only sample ${of} has no statement of custody on record`
    if (without === samples)
      return `None of the agency’s ${samples} samples ${of} has a statement of custody on record`
    return `${without} of the agency’s ${samples} samples ${of} ${without === 1 ? 'has' : 'have'} no statement of custody on record`
  },
}

const PLANNED = {
  split: 'splits',
  independent: 'independent samples',
  assurance: 'assurance visits',
} as const

const KINDS = { split: 'split', independent: 'independent sample' } as const

const DIFFER = { scatter: 'scatter', means: 'their means', both: 'scatter and in their means' } as const

export const AGENCY_EVIDENCE: WordsOf<AgencyFindingParams, [FindingNames], string[]> = {
  'split-beyond-limit': ({ laboratory, producer, agency, unit, decimals, source }, { units, ...names }) => [
    `producer ${figureWords({ value: producer, decimals, unit }, units)}, agency ${figureWords({ value: agency, decimals, unit }, units)} (${names.laboratory(laboratory)})`,
    `limit of the difference from: ${source}`,
    'one pair proves little',
  ],
  'agency-other-side': ({ laboratory, kind, otherWay }, names) => [
    `tested by ${names.laboratory(laboratory)}`,
    ...(otherWay === undefined
      ? []
      : ['the clause takes another result too, which this sample was not tested for']),
    kind === 'split'
      ? 'compare the difference with what testing alone allows, and ask both laboratories'
      : 'the two samples may differ as well as the tests: compare, and ask for another sample',
  ],
  'split-bias': ({ property, low, high, decimals, p }, { units }) => [
    `95 % interval of the mean difference ${differenceWords(property, low, decimals, units)} to ${differenceWords(property, high, decimals, units)}; paired t: ${chanceWords(p)}`,
    'compare methods, equipment and cement of both laboratories',
  ],
  'independent-differs': (
    { property, agencyMean, producerMean, f, pOfF, difference, pOfT, unit, decimals },
    { units },
  ) => [
    `mean of the agency ${figureWords({ value: agencyMean, decimals, unit }, units)}, of the producer ${figureWords({ value: producerMean, decimals, unit }, units)}`,
    `${f === null ? 'F without bounds' : `F ${number(f, 2)}`}, ${chanceWords(pOfF)}; t: difference ${differenceWords(property, difference, decimals, units)}, ${chanceWords(pOfT)}`,
    'lots that resemble their neighbours count for fewer than they are; compare, and ask for further samples',
  ],
  'producer-never-fails': ({ probability }) => [
    `were both equally likely to fail, all failures would be the agency’s by chance in ${percentWords(probability)} of cases`,
    'compare how both sides sample and test',
  ],
  'verification-behind': () => ['was the sample not taken, or is its result not on record?'],
  'no-independent-sample': () => [
    'a split tests the testing only; the material and its sampling are seen by independent samples',
  ],
  'custody-not-stated': ({ listed, without }, names) => [
    firstLots(listed, without, names),
    'who kept the sample from its taking to its testing?',
  ],
}

function percentWords(probability: number): string {
  return probability < 0.0001 ? 'less than 0.01 %' : `${fixedDigits(100 * probability, 2)} %`
}
