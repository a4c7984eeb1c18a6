/**
 * The statements at the head of a source's page: what an auditor reads first. Each compares records; none says what
 * to do about it.
 */
import type { Moment } from '../core/measure/moment.ts'
import type { PropertyKey } from '../core/measure/properties.ts'
import type { ChecksRun } from '../core/checks/checked.ts'
import { date } from './dates.ts'
import { checksRunWords } from './checks-run.ts'
import { fixedDigits, number, plural } from './numbers.ts'
import { propertyWords } from './property-names.ts'
import { counted, lotNamed, plain, type Said, strong } from './said.ts'
import type { LotStanding } from './standing.ts'
import { NO_BREAK } from './signs.ts'
import type { UnitSystem } from './unit-systems.ts'
import { differenceUnitOf } from './unit-signs.ts'
import { massDecimals, quantity } from './units.ts'

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

/** "Listed by AGENCY to DATE: scope", "since DATE" where no end is on record, or that nothing is on record. */
export function listingWords(
  listing: {
    readonly by: string
    readonly since: Moment
    readonly to?: Moment
    readonly scope?: string
    readonly ended?: string
  } | null,
): string {
  if (listing === null) return 'No listing on record'
  const { by, since, to, scope, ended } = listing
  if (ended !== undefined) return `${by}: ${ended}`
  const until = to === undefined ? `since ${date(since)}` : `to ${date(to)}`
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

/** "Strength activity index, 7 d does not meet: 70 % against ≥ 75 %, by 5 points; what is awaited decides". */
export function missedSoFarWords({ title, value, limit, by }: Missed): string {
  return `${title} does not meet: ${value} against ${limit}, by ${by}; what is awaited decides`
}

/** "The record gives 79.3 % for the strength activity index, 28 d, the certificate 78.9 %". */
export function changedWords({
  property,
  age,
  issued,
  today,
}: {
  readonly property: PropertyKey
  readonly age?: string | undefined
  readonly issued: string
  readonly today: string | null
}): string {
  const of = [propertyWords({ property }), age].filter((part) => part !== undefined).join(', ')
  return today === null
    ? `The certificate gives ${issued} for ${of}; in the record no result of it counts`
    : `The record gives ${today} for ${of}, the certificate ${issued}`
}

export interface YearCounts {
  readonly lots: number
  readonly failed: number
  /** In the twelve months, whenever the lot was sampled. */
  readonly withdrawn: number
  /** Of the withdrawn lots, those that are not among the lots. */
  readonly withdrawnEarlierLots: number
  readonly notValid: number
  readonly pending: number
  /** Neither met nor missed for want of history, of a report, or of certainty. */
  readonly undecided: number
  /** Never issued: among the lots, and in none of the counts. */
  readonly drafts: number
  /** Entries of the diversion ledger; null where none is kept. */
  readonly diverted: {
    readonly entries: number
    readonly massT: number
    /** "strength activity index, 7 d 69.7 to 74.9 %"; null without results. */
    readonly results: string | null
  } | null
}

/**
 * "15 lots sampled, 2 failed, 1 withdrawn (sampled earlier), 0 not valid, 0 pending; besides these, 1 diversion of 2024
 * t".
 */
export function yearWords(counts: YearCounts, units: UnitSystem): Said[] {
  const { lots, failed, notValid, pending, undecided, drafts, diverted } = counts
  const undecidedText = undecided === 0 ? '' : `, ${undecided} not yet judged in full`
  const draftText = drafts === 0 ? '' : `, ${plural(drafts, 'draft', 'drafts')} in none of these counts`
  return [
    strong(plural(lots, 'lot', 'lots')),
    plain(' sampled, '),
    counted(failed, `${failed} failed`),
    plain(
      `, ${withdrawnWords(counts)}, ${notValid} not valid, ${pending} pending${undecidedText}${draftText}; ${divertedWords(diverted, units)}`,
    ),
  ]
}

function withdrawnWords({ withdrawn, withdrawnEarlierLots: earlier }: YearCounts): string {
  const text = `${withdrawn} withdrawn`
  if (earlier === 0) return text
  return earlier === withdrawn ? `${text} (sampled earlier)` : `${text} (${earlier} of them sampled earlier)`
}

function divertedWords(diverted: YearCounts['diverted'], units: UnitSystem): string {
  if (diverted === null) return 'diverted: not recorded'
  const { entries, massT, results } = diverted
  if (entries === 0) return 'nothing diverted'
  const found = results === null ? '' : `, ${results}`
  return `besides these, ${plural(entries, 'diversion', 'diversions')} of ${mass(massT, units)}${found}`
}

export interface ClosestWords {
  readonly title: string
  readonly value: string
  readonly limit: string
  readonly n: number
  readonly margin: string
  readonly beyond: boolean
  /** Beyond, and yet the lot does not fail by it: another result of the clause decides. */
  readonly alone: boolean
  readonly at: NamedLot
}

/** "Strength activity index, 7 d, last 84 % against at least 75 %; 15 results, smallest margin 0.9 points". */
export function closestWords(closest: ClosestWords | null): Said[] {
  if (closest === null) return [plain('No result of the last 12 months is held against a limit')]
  const { title, value, limit, n, margin, beyond, alone, at } = closest
  return [
    plain(`${title}, last `),
    strong(value),
    plain(' against '),
    strong(limit),
    plain(`; ${plural(n, 'result', 'results')}, smallest margin `),
    beyond && !alone ? { text: margin, strong: true, alert: true } : strong(margin),
    plain(' ('),
    lotNamed(at),
    plain(alone ? ', which does not fail by this result alone)' : ')'),
  ]
}

/**
 * How far the mean of results lies from their limit, in their standard deviations; below zero beyond it.
 * @param turn where rounding puts the change of the outcome, from which the distance is taken; null for the limit itself
 */
export function distanceWords(distance: number, turn: string | null): string {
  const size = quantity(Math.abs(distance), 1, 'standard deviations')
  const from = turn === null ? 'the limit' : `${turn}, where rounding changes the outcome`
  return distance < 0
    ? `Their mean lies ${size} beyond ${from}, the most of any limit on single results`
    : `Their mean lies ${size} inside ${from}, the fewest of any limit on single results`
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

/** "3; the oldest could have been asked 147 days ago. 30 checks on 36 lots; about 0.4 flags expected ...". */
export function questionWords(
  open: {
    readonly count: number
    readonly oldestDays: number | null
    readonly undated: number
    readonly checks: ChecksRun
  } | null,
): Said[] {
  if (open === null) return [plain('Findings are not published on this site')]
  return [counted(open.count), plain(`${agesWords(open)}. ${checksRunWords(open.checks)}`)]
}

/** A question about a statistic has no day of its own. */
function agesWords({
  oldestDays,
  undated,
}: {
  readonly oldestDays: number | null
  readonly undated: number
}): string {
  if (oldestDays === null) return ''
  const rest =
    undated === 0
      ? ''
      : ` (${undated === 1 ? '1 rests on many records and has' : `${undated} rest on many records and have`} no day)`
  return `; the oldest could have been asked ${plural(oldestDays, 'day', 'days')} ago${rest}`
}

/** A mass of material in the site's own unit. */
export function mass(massT: number, units: UnitSystem): string {
  return quantity(massT, massDecimals(massT), 't', units)
}

/** "0.4 %", "1.3 points": without a sign, since a word says on which side. */
export function marginWords(margin: number, decimals: number, unit: string): string {
  const sign = margin < 0 ? 'beyond by ' : ''
  const size = Math.abs(margin)
  const one = unit === '%' && fixedDigits(size, decimals) === '1'
  const words = one ? `1${NO_BREAK}point` : quantity(size, decimals, differenceUnitOf(unit))
  return `${sign}${words}`
}

/** How many of how many points are drawn; null where all are. */
export function thinnedWords(drawn: number, of: number): string | null {
  if (drawn === of) return null
  return `${number(drawn, 0)} of ${number(of, 0)} results drawn: the lowest and highest of each stretch, all that stand out, and the last`
}

/** That charts begin late in a history; null where all of its lots are drawn. */
export function newestLotsWords(drawn: number, of: number): string | null {
  if (drawn === of) return null
  return `The newest ${number(drawn, 0)} of ${number(of, 0)} lots are drawn; the reports on single years draw those of each year`
}
