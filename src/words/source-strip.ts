/**
 * The statements at the head of a source's page: what an auditor reads first. Each compares records; none says what
 * to do about it.
 */
import type { Moment } from '../core/measure/moment.ts'
import { property, type PropertyKey, storedUnit } from '../core/measure/properties.ts'
import { date } from './dates.ts'
import { number, plainNumber, plural } from './numbers.ts'
import { counted, lotNamed, plain, type Said, strong } from './said.ts'
import type { LotStanding } from './standing.ts'
import type { UnitSystem } from './unit-systems.ts'
import { unitSign } from './unit-signs.ts'
import { massDecimals, quantity, signed } from './units.ts'

interface NamedLot {
  readonly id: string
  readonly number: string
}

/** What missed its limit: "Loss on ignition", "0.4 %". */
export interface Missed {
  readonly title: string
  readonly value: string
  readonly limit: string
  readonly by: string
}

/** "Listed by AGENCY to DATE, scope", or that nothing is on record. */
export function listingWords(
  listing: {
    readonly by: string
    readonly to?: Moment
    readonly scope?: string
    readonly ended?: string
  } | null,
): string {
  if (listing === null) return 'No listing on record'
  const { by, to, scope, ended } = listing
  if (ended !== undefined) return `${by}: ${ended}`
  const until = to === undefined ? 'without an end on record' : `to ${date(to)}`
  return `Listed by ${by} ${until}${scope === undefined ? '' : `: ${scope}`}`
}

/** "SA-2026-004, sampled 19 March 2026: meets so far; 28 d strength activity index due 22 April 2026". */
export function latestWords(
  lot: NamedLot & { readonly sampled: Moment; readonly standing: LotStanding },
  missed: readonly Missed[],
): Said[] {
  const { standing } = lot
  const [first] = missed
  const state = standing.head.charAt(0).toLowerCase() + standing.head.slice(1)
  return [
    lotNamed(lot),
    plain(`, sampled ${date(lot.sampled)}: `),
    missed.length > 0 ? { text: state, strong: true, alert: true } : strong(state),
    plain(standing.rest === null ? '' : `; ${standing.rest}`),
    ...(first === undefined ? [] : [plain(`; ${missedWords(first)}`)]),
  ]
}

/** "loss on ignition 6.4 % against ≤ 6.0 %, by 0.4 %". */
export function missedWords({ title, value, limit, by }: Missed): string {
  return `${title.charAt(0).toLowerCase()}${title.slice(1)} ${value} against ${limit}, by ${by}`
}

export interface YearCounts {
  readonly lots: number
  readonly failed: number
  readonly withdrawn: number
  readonly notValid: number
  readonly pending: number
  /** Entries of the diversion ledger; null where none is kept. */
  readonly diverted: { readonly entries: number; readonly massT: number } | null
}

/** "15 lots, 2 failed, 0 withdrawn, 0 not valid, 0 pending, 1 diverted (2024 t)". */
export function yearWords(counts: YearCounts, units: UnitSystem): Said[] {
  const { lots, failed, withdrawn, notValid, pending, diverted } = counts
  return [
    strong(plural(lots, 'lot', 'lots')),
    plain(', '),
    counted(failed, `${failed} failed`),
    plain(
      `, ${withdrawn} withdrawn, ${notValid} not valid, ${pending} pending, ${divertedWords(diverted, units)}`,
    ),
  ]
}

function divertedWords(diverted: YearCounts['diverted'], units: UnitSystem): string {
  if (diverted === null) return 'diverted: not recorded'
  return `${diverted.entries} diverted (${mass(diverted.massT, units)})`
}

export interface ClosestWords {
  readonly title: string
  readonly value: string
  readonly limit: string
  readonly n: number
  readonly margin: string
  readonly beyond: boolean
  readonly at: NamedLot
}

/** "Strength activity index, 7 d, last 84 % against at least 75 %; 15 results, smallest margin 0.9 points". */
export function closestWords(closest: ClosestWords | null): Said[] {
  if (closest === null) return [plain('No result of the last 12 months is held against a limit')]
  const { title, value, limit, n, margin, beyond, at } = closest
  return [
    plain(`${title}, last `),
    strong(value),
    plain(' against '),
    strong(limit),
    plain(`; ${plural(n, 'result', 'results')}, smallest margin `),
    beyond ? { text: margin, strong: true, alert: true } : strong(margin),
    plain(' ('),
    lotNamed(at),
    plain(')'),
  ]
}

export interface UniformityWords {
  readonly name: string
  readonly outside: number
  readonly judged: number
  readonly half: string
}

/** "residue 2 of 15 outside 5 points; density 0 of 15 outside 5 %". */
export function uniformityWords(counts: readonly UniformityWords[]): Said[] {
  if (counts.length === 0) return [plain('No uniformity clause has been judged in the last 12 months')]
  return counts.flatMap(({ name, outside, judged, half }, place) => [
    plain(`${place === 0 ? '' : '; '}${name} `),
    counted(outside, `${outside} of ${judged}`),
    plain(` outside ${half}`),
  ])
}

export interface LateCounts {
  /** Reports received after their day. */
  readonly late: number
  readonly overdue: number
  readonly gaps: number
  /** null where no monthly report is planned in the record. */
  readonly monthsWithout: number | null
}

/** "1, overdue 0, number gaps 1, months without report 0". */
export function lateWords({ late, overdue, gaps, monthsWithout }: LateCounts): Said[] {
  return [
    counted(late),
    plain(', overdue '),
    counted(overdue),
    plain(', number gaps '),
    counted(gaps),
    plain(', months without report '),
    monthsWithout === null ? plain('not recorded') : counted(monthsWithout),
  ]
}

export interface ShippedCounts {
  readonly shippedT: number
  readonly certifiedT: number
  readonly beforeCompletion: number
  readonly fromFailing: number
}

/** "2212 t of 29 800 t certified; 65 before completion; 10 bills from lots that do not meet". */
export function shippedWords(counts: ShippedCounts, units: UnitSystem): Said[] {
  const { shippedT, certifiedT, beforeCompletion, fromFailing } = counts
  return [
    strong(mass(shippedT, units)),
    plain(` of ${mass(certifiedT, units)} certified; `),
    strong(String(beforeCompletion)),
    plain(' before completion; '),
    counted(fromFailing, plural(fromFailing, 'bill', 'bills')),
    plain(' from lots that do not meet'),
  ]
}

/** "3, oldest 147 days"; of checks and chance where they are counted. */
export function questionWords(
  open: { readonly count: number; readonly oldestDays: number | null } | null,
): Said[] {
  if (open === null) return [plain('Findings are not published on this site')]
  const oldest = open.oldestDays === null ? '' : `, oldest ${plural(open.oldestDays, 'day', 'days')}`
  return [counted(open.count), plain(oldest)]
}

export interface AgencyCounts {
  readonly independent: number
  readonly split: number
  /** Beyond the limit of difference; null where no pair has one. */
  readonly beyond: number | null
  readonly opposite: number
  /** Of the test whose differences lie furthest to one side, agency less producer. */
  readonly difference: {
    readonly property: PropertyKey
    readonly mean: number | null
    readonly interval: { readonly low: number; readonly high: number } | null
  } | null
}

/** "4 independent, 5 split; 1 beyond the precision limit; mean difference +0.55 ± 0.11; 1 on opposite sides". */
export function agencyWords(counts: AgencyCounts | null): Said[] {
  if (counts === null) return [plain('Verification results are not published on this site')]
  const { independent, split, beyond, opposite, difference } = counts
  const head = [strong(String(independent)), plain(' independent, '), strong(String(split)), plain(' split')]
  if (split === 0) return head
  return [
    ...head,
    plain('; '),
    ...(beyond === null
      ? [plain('no precision limit on record')]
      : [counted(beyond), plain(' beyond the precision limit')]),
    ...differenceSaid(difference),
    plain('; '),
    counted(opposite),
    plain(' on opposite sides of a limit'),
  ]
}

function differenceSaid(difference: AgencyCounts['difference']): Said[] {
  if (difference === null || difference.mean === null) return []
  const { property: key, mean, interval } = difference
  const { decimals, title } = property(key)
  const half = interval === null ? '' : ` ± ${plainNumber((interval.high - interval.low) / 2, decimals)}`
  const unit = storedUnit(key) === '%' ? 'percentage points' : storedUnit(key)
  return [
    plain(`; mean difference of splits, ${title.charAt(0).toLowerCase()}${title.slice(1)}, `),
    strong(`${signed(mean, decimals, '')}${half} ${unitSign(unit)}`.trim()),
  ]
}

/** A mass of material in the site's own unit. */
export function mass(massT: number, units: UnitSystem): string {
  return quantity(massT, massDecimals(massT), 't', units)
}

/** "0.4 %", "1.3 points": without a sign, since a word says on which side. */
export function marginWords(margin: number, decimals: number, unit: string): string {
  const sign = margin < 0 ? 'beyond by ' : ''
  const text = quantity(Math.abs(margin), decimals, unit === '%' ? 'percentage points' : unit)
  return `${sign}${text.replace(/^1(?=\D+points$)(\D+point)s$/, '1$1')}`
}

/** How many of how many points are drawn; null where all are. */
export function thinnedWords(drawn: number, of: number): string | null {
  if (drawn === of) return null
  return `${number(drawn, 0)} of ${number(of, 0)} results drawn: the lowest and highest of each stretch, all that stand out, and the last`
}
