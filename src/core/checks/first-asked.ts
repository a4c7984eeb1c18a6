/** When a question could first be asked: the day on which the last of what it takes was on record. */
import { lastDayOf, momentIn } from '../measure/moment.ts'
import type { PropertyKey } from '../measure/properties.ts'
import type { FindingReason } from './finding.ts'

/** A result by as much as a finding says of it. */
export interface AskedTest {
  readonly property: PropertyKey
  readonly age?: string | null
  readonly laboratory?: string
  readonly sample?: string
}

/** The days of a lot, each since 1970-01-01; null where none is on record. */
export interface AskedLot {
  readonly sampled: number
  /** Since when a result of the test has been known, the earliest that it fits. */
  readonly known: (test: AskedTest) => number | null
  /** When a bill's load left. */
  readonly left: (bill: string) => number | null
  /** When a revision was issued. */
  readonly issued: (revision: number) => number | null
}

/**
 * The first day on which a finding could have been made, from what it rests on.
 * @param reason what was found
 * @param lot a lot by its id; null for one that is not to be read
 * @returns days since 1970-01-01; null where the finding rests on many records and names only some of them, or none,
 * as a statistic does
 */
export function firstAsked(reason: FindingReason, lot: (id: string) => AskedLot | null): number | null {
  const { params } = reason
  const own = 'lot' in params && params.lot !== null ? lot(params.lot) : null
  switch (reason.code) {
    case 'number-gap':
      return dayOf((reason.params.after ?? reason.params.before)?.sampled)
    case 'report-missing':
      return after(dayOf(reason.params.due))
    case 'report-late':
      return dayOf(reason.params.received)
    case 'result-overdue':
      return dayOf(reason.params.since)
    case 'verification-behind':
      return after(dayOf(reason.params.to))
    case 'shipped-without-certificate':
    case 'shipped-before-results':
    case 'shipped-on-missed-age':
    case 'shipped-after-withdrawal':
    case 'shipped-on-old-certificate':
    case 'shipped-while-unlisted':
      return dayOf(reason.params.shipped.first.date)
    case 'shipped-after-failure':
      return earliest([reason.params.shipped, reason.params.shared].map((one) => dayOf(one?.first.date)))
    case 'failed-after-shipping':
      return dayOf(reason.params.known)
    case 'tested-outside-accreditation':
    case 'equipment-unverified':
    case 'laboratory-unbridged':
      return dayOf(reason.params.first?.day)
    case 'tested-on-closed-day':
      return reason.params.tests === reason.params.listed.length
        ? earliest(reason.params.listed.map((one) => dayOf(one?.day)))
        : null
    case 'cement-unbridged':
      return earliest(reason.params.changes.map((one) => dayOf(one?.on)))
    case 'proficiency-open':
      return dayOf(reason.params.date)
    case 'changed-after-issue':
    case 'would-now-be-judged-otherwise':
      return own?.issued(reason.params.revision) ?? null
    case 'shipment-mass':
    case 'bill-twice':
      return own?.left(reason.params.bill) ?? null
    case 'uniformity-exceeded':
      return reason.params.outside === reason.params.lots.length
        ? earliest(reason.params.lots.map((id) => (id === null ? null : (lot(id)?.sampled ?? null))))
        : null
    case 'balance-off':
      return reason.params.off === reason.params.listed.length
        ? earliest(reason.params.listed.map(({ month }) => lastDayOf(month).day + 1))
        : null
    default:
      if (own === null) return null
      return 'property' in params ? (own.known(params) ?? own.sampled) : own.sampled
  }
}

function dayOf(text: string | undefined): number | null {
  return text === undefined ? null : (momentIn(text)?.day ?? null)
}

function after(day: number | null): number | null {
  return day === null ? null : day + 1
}

function earliest(days: readonly (number | null)[]): number | null {
  const known = days.filter((day) => day !== null)
  return known.length === 0 ? null : known.reduce((a, b) => Math.min(a, b))
}
