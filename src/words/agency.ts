/** Producer against agency, in words. */
import type { IndependentComparison } from '../core/agency/independent-comparison.ts'
import { SHIFT } from '../core/agency/independent-comparison.ts'
import type { Side, SidesOfLimit } from '../core/agency/sides.ts'
import type { SplitComparison } from '../core/agency/split-comparison.ts'
import type { VerificationStatus } from '../core/agency/verification-status.ts'
import { type PropertyKey, storedUnit } from '../core/measure/properties.ts'
import { period } from './dates.ts'
import { limitWords } from './limits.ts'
import { fixedDigits, number, plural } from './numbers.ts'
import { differenceUnitOf } from './unit-signs.ts'
import { quantity, signed } from './units.ts'
import type { UnitSystem } from './unit-systems.ts'

/** Unit of a difference: percentages differ by points. */
export function differenceUnit(key: PropertyKey): string {
  return differenceUnitOf(storedUnit(key))
}

/** "+0.55 points", agency less producer. */
export function differenceWords(
  key: PropertyKey,
  difference: number,
  decimals: number,
  units: UnitSystem,
): string {
  return signed(difference, decimals, differenceUnit(key), units)
}

/** "0.57 points", without a sign. */
export function spreadWords(key: PropertyKey, value: number, decimals: number, units: UnitSystem): string {
  return quantity(value, decimals, differenceUnit(key), units)
}

const SIDES: Readonly<Record<Side, string>> = {
  meets: 'meets',
  'would-not-meet': 'would not meet',
  open: 'cannot be told',
}

/** "at most 6.0 %: the producer’s meets, the agency’s would not meet", and what another result of the clause changes. */
export function sidesWords({ limit, producer, agency, otherWay }: SidesOfLimit): string {
  const said =
    producer === agency
      ? producer === 'open'
        ? 'neither can be told'
        : `both ${producer === 'meets' ? 'meet' : 'would not meet'}`
      : `the producer’s ${SIDES[producer]}, the agency’s ${SIDES[agency]}`
  return `${limitWords(limit)}: ${said}${producer === agency ? '' : otherWayWords(otherWay)}`
}

function otherWayWords(otherWay: SidesOfLimit['otherWay']): string {
  if (otherWay === 'both-meet') return '; the clause takes either result, and both sides meet it by one'
  return otherWay === 'not-tested'
    ? '; the clause takes another result too, which this sample was not tested for'
    : ''
}

/** A chance as print gives it: never as nought. */
export function chanceWords(p: number): string {
  return p < 0.001 ? 'p below 0.001' : `p = ${fixedDigits(p, 3)}`
}

/** Sentences on the splits of one test, without full stops. */
export function splitSentences(found: SplitComparison, decimals: number, units: UnitSystem): string[] {
  const key = found.property
  return [
    meanSentence(found, decimals, units),
    found.precision === null
      ? 'No precision between laboratories is on record for this test, so the differences stand alone'
      : `${found.precision.beyond} of ${found.precision.of} beyond the limit of difference; about ${number(found.precision.expected, 1)} expected by chance`,
    ...(found.opposite === 0
      ? []
      : [`${plural(found.opposite, 'pair', 'pairs')} on opposite sides of a limit`]),
    ...runningSentence(found, key, decimals, units),
  ]
}

function meanSentence(
  { property: key, n, mean, paired }: SplitComparison,
  decimals: number,
  units: UnitSystem,
): string {
  if (mean === null) return 'No difference can be taken: one value of each pair is known only within bounds'
  const text = differenceWords(key, mean, decimals + 1, units)
  if (paired === null)
    return n === 1
      ? `One pair, ${text}; one pair proves little`
      : `Mean difference ${text} of ${n} pairs, which do not scatter: no interval`
  const half = (paired.interval[1] - paired.interval[0]) / 2
  return `Mean difference ${text} ± ${spreadWords(key, half, decimals + 1, units)} (95 %, ${n} pairs, paired t: ${chanceWords(paired.p)})`
}

function runningSentence(
  { running }: SplitComparison,
  key: PropertyKey,
  decimals: number,
  units: UnitSystem,
): string[] {
  const last = running.findLast((one) => one !== null)
  if (last === undefined || running.length < 2) return []
  return [`Differences add up to ${differenceWords(key, last.sum, decimals, units)}`]
}

/** Sentences on independent samples of one test, without full stops. */
export function independentSentences(
  found: IndependentComparison,
  decimals: number,
  units: UnitSystem,
): string[] {
  const { agency, producer, from, to, level, f, t, form, power, property: key } = found
  const percent = `${number(100 * level, 0)} %`
  const sets = `Agency: ${setWords(agency, key, decimals, units)}; producer: ${setWords(producer, key, decimals, units)}, lots sampled ${period(from, to)}`
  if (f === null || t === null) return [sets, 'Too few results to compare scatter and mean']
  const scatter = f.p < level ? 'scatter differs' : 'no difference of scatter shown'
  const means = t.p < level ? 'means differ' : 'no difference of means shown'
  return [
    sets,
    `F ${number(f.ratio, 2)} (${chanceWords(f.p)}): ${scatter} at ${percent}`,
    `Student’s t with ${form === 'pooled' ? 'a common scatter' : 'each side’s own scatter (Welch)'}: difference ${differenceWords(key, t.difference, decimals + 1, units)}, ${chanceWords(t.p)}: ${means} at ${percent}`,
    ...(power === null
      ? []
      : [
          `${agency.n} against ${producer.n} at ${percent} see a shift of ${SHIFT} s in ${number(100 * power, 0)} % of cases${t.p < level ? '' : ': no difference shown is not agreement'}`,
        ]),
  ]
}

function setWords(
  { n, mean, standardDeviation }: IndependentComparison['agency'],
  key: PropertyKey,
  decimals: number,
  units: UnitSystem,
): string {
  const s =
    standardDeviation === null ? '' : `, s ${spreadWords(key, standardDeviation, decimals + 1, units)}`
  return `n ${n}, mean ${quantity(mean, decimals + 1, storedUnit(key), units)}${s}`
}

const KINDS = { independent: 'independent samples', split: 'splits', assurance: 'assurance' } as const

/** "splits", "independent samples" and "assurance" of a plan. */
export function verificationKindWords(kind: VerificationStatus['kind']): string {
  return KINDS[kind]
}

/** "4 planned, 3 on record, 1 missing"; of a period that goes on, "1 to come". */
export function takenWords({ planned, taken, missing, over }: VerificationStatus): string {
  if (taken === null || missing === null) return `${planned} planned; no assurance visit is on record`
  const tail = missing === 0 ? '' : over ? `, ${missing} missing` : `, ${missing} to come`
  return `${planned} planned, ${taken} on record${tail}`
}

/** Without independent samples nothing is known of the material and its sampling. */
export const NO_INDEPENDENT = 'No independent sample on record: splits test the testing only'
