/** What the checks of a laboratory found, in words. */
import type { LaboratoryParams } from '../core/checks/laboratory-findings.ts'
import { FAR } from '../core/checks/control-batches.ts'
import type { PropertyKey } from '../core/measure/properties.ts'
import { date } from './dates.ts'
import type { FindingNames } from './finding-names.ts'
import { lotNumbers } from './named-tests.ts'
import { numberWords, plainNumber, plural } from './numbers.ts'
import { propertyWords } from './property-names.ts'
import type { WordsOf } from './reason-words.ts'
import { listWords } from './sentences.ts'
import { UNISSUED_LOT } from './withheld.ts'

export const LABORATORY_SENTENCES: WordsOf<LaboratoryParams, [FindingNames]> = {
  'control-batch-off': ({ control, laboratory, property, age, percent, batches, cement }, names) =>
    `The ${age} ${propertyWords({ property })} of control ${control} (${names.laboratory(laboratory)}) is ${numberWords(Math.abs(percent), 0, '%')} ${
      percent < 0 ? 'below' : 'above'
    } the mean of the ${plural(batches, 'batch', 'batches')} before it with cement ${cement}`,
  'proficiency-open': ({ laboratory, round, property, z }, names) =>
    `${names.laboratory(laboratory)} scored z = ${plainNumber(z, 1)} for ${propertyWords({ property })} in ${round}, beyond 2, and no closure is on record`,
  'proficiency-lapsed': ({ laboratory, last }, names) =>
    last === null
      ? `No proficiency round is on record for ${names.laboratory(laboratory)}`
      : `The last proficiency round on record for ${names.laboratory(laboratory)} was reported on ${date(last)}, more than 12 months ago`,
  'laboratory-unbridged': ({ source, from, to }, names) =>
    `${names.laboratory(to)} took over tests of ${names.source(source)} from ${names.laboratory(from)}, and no lot on record was tested by both`,
  'cement-unbridged': ({ source, laboratory, changes }, names) =>
    `${names.laboratory(laboratory)} changed its control cement ${changes.length === 1 ? 'once' : `${changes.length} times`} while testing ${names.source(source)}, with no batches made side by side on record`,
}

export const LABORATORY_EVIDENCE: WordsOf<LaboratoryParams, [FindingNames], string[]> = {
  'control-batch-off': ({ scatterPercent, lots, source, percent }, names) => [
    `batches of one cement, of all before it, scatter by ${numberWords(scatterPercent, 1, '%')} there; asked from ${FAR} % on where chance puts fewer than 3 of 1000 batches so far off`,
    `it ${percent < 0 ? 'raises' : 'lowers'} the indices of the lots of ${names.source(source)} tested beside it: ${lotNumbers(lots, names)}`,
  ],
  'proficiency-open': ({ date: reported, z }) => [
    `round reported on ${date(reported)}`,
    3 < Math.abs(z)
      ? 'beyond 3 chance is a poor explanation: what was the cause?'
      : 'about one round in 22 lies beyond 2 by chance alone',
  ],
  'proficiency-lapsed': () => ['was there none, or is its report not on record?'],
  'laboratory-unbridged': ({ properties, first }, names) => [
    `first for ${first === null ? UNISSUED_LOT : `lot ${names.number(first.lot)}, sampled ${date(first.day)}`}: ${firstProperties(properties)}`,
    'comparing results before with those after compares two laboratories as well',
  ],
  'cement-unbridged': ({ changes }, names) => [
    ...changes.map((one) =>
      one === null
        ? `another cement for ${UNISSUED_LOT}`
        : `${one.from} to ${one.to}, first cast ${date(one.on)} (${names.number(one.lot)})`,
    ),
    'comparing an index before such a change with one after it compares two cements as well',
  ],
}

/** Properties named: own choice. */
const NAMED = 6

/** Oxides, which are many, come last. */
function firstProperties(properties: readonly PropertyKey[]): string {
  const isOxide = (key: PropertyKey) => /^[A-Z]/.test(key)
  const inOrder = [...properties.filter((key) => !isOxide(key)), ...properties.filter(isOxide)]
  const named = inOrder.slice(0, NAMED).map((key) => propertyWords({ property: key }))
  const more = inOrder.length - named.length
  return listWords(more === 0 ? named : [...named, `${more} more`], 'and')
}
