/** What the checks found that ask whether the material is still the same, in words. */
import type { IdentityParams } from '../core/checks/identity-findings.ts'
import { period } from './dates.ts'
import type { FindingNames } from './finding-names.ts'
import { countWords, fixedDigits } from './numbers.ts'
import type { WordsOf } from './reason-words.ts'
import { UNISSUED_LOT } from './withheld.ts'

export const IDENTITY_SENTENCES: WordsOf<IdentityParams, [FindingNames]> = {
  'sampled-in-outage': ({ lot, what, title, from, to }, names) =>
    `${what === 'produced' ? `All of ${names.lot(lot)} was produced` : `A sample of ${names.lot(lot)} was taken`} within an outage, ${period(from, to)} (${title})`,
  'blend-total': ({ lot, total }, names) =>
    `The constituents of ${names.lot(lot)} add up to ${fixedDigits(total, 1)} %`,
  'class-beside-calcium': ({ source, class: claimed, lots, of }, names) =>
    `${lots} of ${countWords(of, 'lot')} of ${names.source(source)}, of class ${claimed}, ${lots === 1 ? 'has' : 'have'} ${claimed === 'F' ? 'more than 18 % of CaO' : 'CaO of 18 % or less'}, which is class ${claimed === 'F' ? 'C' : 'F'} by calcium oxide`,
  'feed-rising': ({ source, of, lots, slope, half }, names) =>
    `The ${RISING[of]} of ${names.source(source)} rises by ${fixedDigits(slope, 2)} ± ${fixedDigits(half, 2)} points per ten lots over its last ${lots}`,
}

const RISING = { 'feed-moisture': 'moisture of the feed', 'residue-160um': 'residue on 160 µm' } as const

export const IDENTITY_EVIDENCE: WordsOf<IdentityParams, [FindingNames], string[]> = {
  'sampled-in-outage': () => ['where did the material come from: stock, another unit, or another day?'],
  'blend-total': ({ shares }, names) => [
    shares.map(({ source, percent }) => `${names.source(source)} ${fixedDigits(percent, 1)} %`).join(', '),
  ],
  'class-beside-calcium': ({ listed, near, of }, names) => [
    listed
      .map((one) =>
        one === null ? UNISSUED_LOT : `${names.number(one.lot)} ${fixedDigits(one.calcium, 1)} %`,
      )
      .join(', '),
    `${near} of ${countWords(of, 'lot')} within one point of 18 %; editions before 2019 set the class by the sum of oxides`,
  ],
  'feed-rising': () => [
    '99 % interval of a straight line; compare with where in the deposit the feed came from',
  ],
}
