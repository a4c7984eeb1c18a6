/** What an agency's samples of a source show, in one statement at the head of its page. */
import { CHECKS } from '../core/checks/catalogue.ts'
import { property, type PropertyKey, storedUnit } from '../core/measure/properties.ts'
import { plainNumber } from './numbers.ts'
import { counted, plain, type Said, strong } from './said.ts'
import { differenceUnitOf, unitSign } from './unit-signs.ts'
import { signed } from './units.ts'

export interface AgencyCounts {
  readonly independent: number
  /** Tests that independent samples and the producer's lots are compared by, and those whose means differ. */
  readonly means: { readonly differ: number; readonly of: number; readonly level: number } | null
  readonly split: number
  /** Beyond the limit of difference; null where no pair has one. */
  readonly beyond: number | null
  /** Pairs on opposite sides of a limit. */
  readonly opposite: { readonly independent: number; readonly split: number }
  /** Of one property that is chosen before its differences are known, agency less producer. */
  readonly difference: {
    readonly property: PropertyKey
    /** "7 d"; null of a property without one. */
    readonly age: string | null
    readonly mean: number | null
    readonly interval: { readonly low: number; readonly high: number } | null
  } | null
  /** Properties that splits compare. */
  readonly compared: number
  /** Of them, those with a bias that is more than chance; null where findings are not published. */
  readonly biased: readonly PropertyKey[] | null
}

/**
 * "4 independent: means differ in 3 of 6 tests at 1 %; 5 split; 1 beyond the precision limit; mean difference of splits,
 * loss on ignition, +0.55 ± 0.11 points (agency less producer, 95 % interval); 2 on opposite sides of a limit (1 independent, 1 split)".
 */
export function agencyWords(counts: AgencyCounts | null): Said[] {
  if (counts === null) return [plain('Verification results are not published on this site')]
  const { independent, means, split, beyond, difference, compared } = counts
  const head = [
    strong(String(independent)),
    plain(' independent'),
    ...meansSaid(means),
    plain(means === null ? ', ' : '; '),
    strong(String(split)),
    plain(' split'),
  ]
  if (split + independent === 0) return head
  const limited =
    beyond === null
      ? [plain(compared === 0 ? 'none compared' : 'no precision limit on record')]
      : [strong(String(beyond)), plain(' beyond the precision limit')]
  return [
    ...head,
    ...(split === 0 ? [] : [plain('; '), ...limited]),
    ...differenceSaid(difference),
    ...oppositeSaid(counts),
  ]
}

function meansSaid(means: AgencyCounts['means']): Said[] {
  if (means === null) return []
  const { differ, of, level } = means
  return [
    plain(': means differ in '),
    counted(differ),
    plain(` of ${of} ${of === 1 ? 'test' : 'tests'} at ${plainNumber(100 * level, 0)} %`),
  ]
}

function oppositeSaid({ opposite: { independent, split } }: AgencyCounts): Said[] {
  const all = independent + split
  const of = all === 0 ? '' : ` (${independent} independent, ${split} split)`
  return [plain('; '), counted(all), plain(` on opposite sides of a limit${of}`)]
}

/** "5 other properties in D; of 6 compared, 1 with a bias shown at 1 %: loss on ignition": what the one difference leaves out. */
export function comparedWords({ difference, compared, biased }: AgencyCounts): Said[] {
  if (difference === null || difference.mean === null) return []
  const others = compared - 1
  const rest = others === 0 ? 'No other property compared' : `${others} other ${noun(others)} in D`
  return [plain(`${rest}${biasWords(compared, biased)}.`)]
}

function noun(count: number): string {
  return count === 1 ? 'property' : 'properties'
}

/** Of the check on a bias of splits. */
const BIAS_LEVEL = `${plainNumber(100 * (CHECKS['split-bias'].rate ?? 0), 0)} %`

function biasWords(compared: number, biased: AgencyCounts['biased']): string {
  if (biased === null) return ''
  const names = biased.map((key) => lowerFirst(property(key).title)).join(', ')
  return biased.length === 0
    ? `; of ${compared} compared, none with a bias shown at ${BIAS_LEVEL}`
    : `; of ${compared} compared, ${biased.length} with a bias shown at ${BIAS_LEVEL}: ${names}`
}

function differenceSaid(difference: AgencyCounts['difference']): Said[] {
  if (difference === null || difference.mean === null) return []
  const { property: key, age, mean, interval } = difference
  const { decimals, title } = property(key)
  const half = interval === null ? '' : ` ± ${plainNumber((interval.high - interval.low) / 2, decimals)}`
  const level = interval === null ? '' : ', 95 % interval'
  const unit = differenceUnitOf(storedUnit(key))
  return [
    plain(`; mean difference of splits, ${lowerFirst(title)}${age === null ? '' : ` at ${age}`}, `),
    strong(`${signed(mean, decimals, '')}${half} ${unitSign(unit)}`.trim()),
    plain(` (agency less producer${level})`),
  ]
}

function lowerFirst(title: string): string {
  return `${title.charAt(0).toLowerCase()}${title.slice(1)}`
}
