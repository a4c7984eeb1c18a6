/** What the checks of a laboratory found, in words. */
import type { LaboratoryParams } from '../core/checks/laboratory-findings.ts'
import { date } from './dates.ts'
import { numberWords, plainNumber, plural } from './numbers.ts'
import { propertyWords } from './property-names.ts'
import type { WordsOf } from './reason-words.ts'
import { listWords } from './sentences.ts'
import { UNISSUED_LOT } from './withheld.ts'

export const LABORATORY_SENTENCES: WordsOf<LaboratoryParams> = {
  'control-batch-off': ({ control, laboratory, property, age, percent, batches, cement }) =>
    `The ${age} ${propertyWords({ property })} of control ${control} (${laboratory}) is ${numberWords(Math.abs(percent), 0, '%')} ${
      percent < 0 ? 'below' : 'above'
    } the mean of the ${plural(batches, 'batch', 'batches')} before it with cement ${cement}`,
  'proficiency-open': ({ laboratory, round, property, z }) =>
    `${laboratory} scored ${plainNumber(z, 1)} for ${propertyWords({ property })} in ${round}, beyond 2, and no closure is on record`,
  'proficiency-lapsed': ({ laboratory, last, source }) =>
    last === null
      ? `No proficiency round of ${laboratory} is on record, which tests for ${source}`
      : `The last proficiency round on record of ${laboratory}, which tests for ${source}, was reported on ${date(last)}, more than 12 months ago`,
  'cement-unbridged': ({ source, laboratory, changes }) =>
    `${laboratory} changed the control cement of ${source} ${changes.length === 1 ? 'once' : `${changes.length} times`} without batches made side by side on record`,
}

export const LABORATORY_EVIDENCE: WordsOf<LaboratoryParams, [], string[]> = {
  'control-batch-off': ({ scatterPercent, lots, source, percent }) => [
    `its batches of one cement scatter by ${numberWords(scatterPercent, 1, '%')}`,
    `lots of ${source} tested beside it, whose indices it ${percent < 0 ? 'raises' : 'lowers'}: ${listWords(
      lots.map((lot) => lot ?? UNISSUED_LOT),
      'and',
    )}`,
  ],
  'proficiency-open': ({ date: reported, z }) => [
    `round reported on ${date(reported)}`,
    3 < Math.abs(z)
      ? 'beyond 3 chance is a poor explanation: what was the cause?'
      : 'about one round in 22 lies beyond 2 by chance alone',
  ],
  'proficiency-lapsed': () => ['was there none, or is its report not on record?'],
  'cement-unbridged': ({ changes }) => [
    ...changes.map(({ from, to, on }) => `${from} to ${to}, first cast ${date(on)}`),
    'an index before and one after a change compare two cements as well',
  ],
}
