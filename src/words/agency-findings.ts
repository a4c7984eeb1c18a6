/** What the checks of an agency's results found, in words. */
import type { AgencyFindingParams } from '../core/checks/agency-findings.ts'
import { property, type PropertyKey } from '../core/measure/properties.ts'
import { chanceWords, differenceWords, spreadWords } from './agency.ts'
import { limitWords } from './limits.ts'
import { figureWords, number } from './numbers.ts'
import type { WordsOf } from './reason-words.ts'
import { listWords } from './sentences.ts'

export const AGENCY_SENTENCES: WordsOf<AgencyFindingParams> = {
  'split-beyond-limit': ({ lot, sample, property: key, difference, limit, decimals, ...test }) =>
    `The split ${sample} of ${lot} differs from the producer’s ${testWords(key, test)} by ${differenceWords(key, difference, decimals, 'SI')}, beyond the ${spreadWords(key, limit, decimals, 'SI')} that testing alone allows in 19 of 20 pairs`,
  'agency-other-side': ({
    lot,
    kind,
    sample,
    property: key,
    meets,
    producer,
    agency,
    unit,
    decimals,
    limits,
    ...test
  }) =>
    `The agency’s ${KINDS[kind]} ${sample} of ${lot} gave ${figureWords({ value: agency, decimals, unit })} and the producer’s ${testWords(key, test)} is ${figureWords({ value: producer, decimals, unit })}: ${
      meets === 'producer'
        ? 'the producer’s meets and the agency’s would not meet'
        : 'the agency’s would meet and the producer’s does not meet'
    } ${listWords(
      limits.map(({ limit }) => limitWords(limit)),
      'and',
    )}`,
  'split-bias': ({ source, property: key, n, mean, low, high, decimals, ...test }) =>
    `The agency’s splits of ${source} differ in one direction: ${testWords(key, test)}, mean difference ${differenceWords(key, mean, decimals, 'SI')} ± ${spreadWords(key, (high - low) / 2, decimals, 'SI')} over ${n} pairs`,
  'independent-differs': ({ source, property: key, differ, agency, producer, level, ...test }) =>
    `The agency’s ${agency} independent samples of ${source} and the producer’s ${producer} lots of the same period differ in ${DIFFER[differ]} at ${number(100 * level, 0)} %: ${testWords(key, test)}`,
}

const KINDS = { split: 'split', independent: 'independent sample' } as const

const DIFFER = { scatter: 'scatter', means: 'their means', both: 'scatter and in their means' } as const

/** "28 d strength activity index (condition c311)". */
function testWords(
  key: PropertyKey,
  { condition, age }: { readonly condition: string | null; readonly age: string | null },
): string {
  const name = [age, property(key).title.toLowerCase()].filter((part) => part !== null).join(' ')
  return condition === null ? name : `${name} (condition ${condition})`
}

export const AGENCY_EVIDENCE: WordsOf<AgencyFindingParams, [], string[]> = {
  'split-beyond-limit': ({ laboratory, producer, agency, unit, decimals, source }) => [
    `producer ${figureWords({ value: producer, decimals, unit })}, agency ${figureWords({ value: agency, decimals, unit })} (${laboratory})`,
    `limit of difference from: ${source}`,
    'about one pair in twenty lies beyond by chance; one pair proves little',
  ],
  'agency-other-side': ({ laboratory, kind }) => [
    `tested by ${laboratory}`,
    kind === 'split'
      ? 'compare the difference with what testing alone allows, and ask both laboratories'
      : 'the two samples may differ as well as the tests: compare, and ask for another sample',
  ],
  'split-bias': ({ p }) => [
    `paired t: ${chanceWords(p)}`,
    'compare methods, equipment and cement of both laboratories',
  ],
  'independent-differs': ({
    property: key,
    agencyMean,
    producerMean,
    f,
    pOfF,
    difference,
    pOfT,
    unit,
    decimals,
  }) => [
    `mean of the agency ${figureWords({ value: agencyMean, decimals, unit })}, of the producer ${figureWords({ value: producerMean, decimals, unit })}`,
    `${f === null ? 'F without bounds' : `F ${number(f, 2)}`}, ${chanceWords(pOfF)}; t: difference ${differenceWords(key, difference, decimals, 'SI')}, ${chanceWords(pOfT)}`,
    'lots that resemble their neighbours count for fewer than they are; compare, and ask for further samples',
  ],
}
