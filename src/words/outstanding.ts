/** What is due and has not come, of results, certificates, reports and lot numbers, in the words that other pages use. */
import { dateOf, type Moment } from '../core/measure/moment.ts'
import { date, month } from './dates.ts'
import { plural } from './numbers.ts'

/** In the order in which one day lists them. */
export const OUTSTANDING_KINDS = {
  'result-overdue': 'Result overdue',
  'report-missing': 'Report missing',
  'certificate-to-issue': 'Certificate to issue',
  'number-missing': 'Lot number missing',
  'result-due': 'Result due',
  'report-due': 'Report due',
} as const

export type OutstandingKind = keyof typeof OUTSTANDING_KINDS

/** "no report for March 2026, due by 15 April 2026"; of several months from the first to the last. */
export function reportMissingWords(run: {
  readonly first: string
  readonly last: string
  readonly months: number
  readonly due: string
}): string {
  const { first, last, months, due } = run
  return months === 1
    ? `no report for ${month(first)}, due by ${date(due)}`
    : `no report for ${months} months, ${month(first)} to ${month(last)}; the first was due by ${date(due)}`
}

export function reportDueWords(reported: string, due: Moment): string {
  return `report for ${month(reported)}, due by ${date(due)}`
}

/** @param since day on which the last of the results came */
export function toIssueWords(state: 'draft' | 'provisional', since: Moment): string {
  return state === 'draft'
    ? `results on record since ${date(since)}, no certificate issued`
    : `further results on record since ${date(since)}, which the certificate does not state`
}

/** "Known since revision 1, so not stated in it: loss on ignition 3.31 %, tested 20 May 2024." */
export function laterResultSentence(
  revision: number,
  { test, result, tested }: { readonly test: string; readonly result: string; readonly tested: Moment },
): string {
  return `Known since revision ${revision}, so not stated in it: ${test} ${result}, tested ${date(dateOf(tested))}.`
}

/** "no lot bears SA-2025-014", "no lot bears any of the 3 numbers SA-2025-014 to SA-2025-016". */
export function numberMissingWords(gap: {
  readonly first: string
  readonly last: string
  readonly missing: number
}): string {
  const { first, last, missing } = gap
  return missing === 1
    ? `no lot bears ${first}`
    : `no lot bears any of ${plural(missing, 'number', 'numbers')}, ${first} to ${last}`
}

/** "3 overdue or missing, 5 due". */
export function outstandingWords(past: number, coming: number): string {
  return `${past} overdue or missing, ${coming} due`
}
