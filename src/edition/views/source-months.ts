/** Samples, masses and reports of a source month by month, against what its record plans. */
import {
  daysBetween,
  lastDayOf,
  type Moment,
  monthOf,
  readMoment,
  monthNumber,
  monthOfNumber,
} from '../../core/measure/moment.ts'
import { reportDue } from '../../core/checks/monthly-reports.ts'
import { numberGaps } from '../../core/checks/lot-numbers.ts'
import type { UnusedNumber } from '../../words/source-deliveries.ts'
import type { Edition, ListedLot, SourceEntry } from '../shape/edition.ts'
import { isInForce } from './last-lot.ts'
import { isFailed } from './source-strip.ts'
import { type BalanceLack, balanceTeller } from './source-balance.ts'
import { billsOf, leftUncertified, type SourceBill } from './source-bills.ts'
import type { SourceLot } from './source-lots.ts'

type Reports = NonNullable<SourceEntry['record']['reports']>

export interface MonthLine {
  /** "2026-03" */
  readonly month: string
  readonly lots: number
  /** Least number of composite samples that the plan asks for; null without a plan. */
  readonly planned: number | null
  /** Of lots with a certificate in force, whatever their verdict. */
  readonly certifiedT: number
  /** Of those among them that do not meet. */
  readonly failedT: number
  /** Whatever became of the lots. */
  readonly shippedT: number
  /** Of it, of lots whose certificate is withdrawn, or that have none. */
  readonly shippedOtherT: number
  /** null where neither ledger nor balance tells. */
  readonly divertedT: number | null
  /** By the ledger of the material balance; null in a month that it leaves out. */
  readonly producedT: number | null
  /** Produced and not accounted for by the material balance, or what it lacks; null where none is kept. */
  readonly balanceT: number | BalanceLack | null
  readonly report: MonthReport
}

/** What became of the report on a month. */
export type MonthReport =
  | { readonly state: 'not-planned' | 'not-due' | 'missing' }
  | { readonly state: 'in-time' | 'late'; readonly days: number }

/** Lot numbers that follow one another and that nobody bears. */
export interface NumberGap {
  readonly first: string
  readonly last: string
  readonly missing: number
  /** Of the lot after the gap. */
  readonly sampled: Moment
  readonly month: string
}

export interface SourceMonths {
  /** The last twelve months, oldest first. */
  readonly lines: readonly MonthLine[]
  /** Reports received after their day, of the last twelve months. */
  readonly late: number
  /** Of the last twelve, months whose report is due and has not come; null where none is planned. */
  readonly without: number | null
  /** Lot numbers of the last twelve months that no lot bears and no record gives up; null where none can be told. */
  readonly gaps: readonly NumberGap[] | null
  /** Numbers that the record says were given and not used, whenever that was. */
  readonly unused: readonly UnusedNumber[]
}

const SHOWN = 12

export function monthsOf(edition: Edition, source: SourceEntry, lots: readonly SourceLot[]): SourceMonths {
  const { reports } = source.record
  const newest = monthOf(edition.asOf)
  const since = monthOfNumber(monthNumber(newest) - SHOWN + 1)
  const lines = monthsWithin(edition, source, lots, [since, newest])
  const states = lines.map(({ report }) => report.state)
  return {
    lines,
    late: states.filter((state) => state === 'late').length,
    without: reports === undefined ? null : states.filter((state) => state === 'missing').length,
    gaps:
      gapsOf(
        source,
        lots.map(({ row }) => row),
      )?.filter(({ month }) => since <= month) ?? null,
    unused: source.record['numbers-not-used'] ?? [],
  }
}

/** @param within first and last month, "2026-03" */
export function monthsWithin(
  edition: Edition,
  source: SourceEntry,
  lots: readonly SourceLot[],
  within: readonly [from: string, to: string],
): MonthLine[] {
  const { record } = source
  const sampled = Map.groupBy(lots, ({ row }) => monthOf(row.sampled))
  const bills = billsOf(lots)
  const [shipped, other] = [shippedByMonth(bills), shippedByMonth(bills.filter(leftUncertified))]
  const diverted = divertedByMonth(record)
  const balance = balanceTeller(edition, source)
  return monthsBetween(...within).map((month) => {
    const own = sampled.get(month) ?? []
    const certified = own.filter(({ row }) => isInForce(row))
    return {
      month,
      lots: own.length,
      // The plan is of what was produced, whatever became of the certificates.
      planned: plannedSamples(source, tonnesOf(own), month),
      certifiedT: tonnesOf(certified),
      failedT: tonnesOf(certified.filter(isFailed)),
      shippedT: shipped.get(month) ?? 0,
      shippedOtherT: other.get(month) ?? 0,
      divertedT: diverted === null ? null : (diverted.get(month) ?? 0),
      ...balance(month),
      report: reportOf(edition, record.reports, month),
    }
  })
}

function shippedByMonth(bills: readonly SourceBill[]): Map<string, number> {
  return sums(bills.map(({ shipment: { date, massT } }) => [monthOf(date), massT] as const))
}

function tonnesOf(lots: readonly SourceLot[]): number {
  return lots.reduce((sum, { row }) => sum + row.tonnes, 0)
}

/** The ledger tells what was diverted; the lines of the balance where no ledger is kept. */
function divertedByMonth({ diverted, balance }: SourceEntry['record']): Map<string, number> | null {
  if (diverted !== undefined) return sums(diverted.map(({ on, mass }) => [monthOf(on), mass.value] as const))
  if (balance === undefined) return null
  return sums(balance.map((line) => [line.month, line.diverted?.value ?? 0] as const))
}

function sums(entries: readonly (readonly [month: string, mass: number])[]): Map<string, number> {
  const found = new Map<string, number>()
  for (const [month, mass] of entries) found.set(month, (found.get(month) ?? 0) + mass)
  return found
}

/** The composite samples that mass or time asks for, whichever are more; none in a month without material. */
function plannedSamples({ record }: SourceEntry, massT: number, month: string): number | null {
  const plan = record['sampling-plan']?.find(({ kind }) => kind === 'composite')
  if (plan === undefined) return null
  if (massT === 0) return 0
  const byMass = plan.every === undefined ? 0 : Math.ceil(massT / plan.every.value)
  const days = daysBetween(readMoment(`${month}-01`), lastDayOf(month)) + 1
  const hours = plan['or-every']?.value
  return Math.max(1, byMass, hours === undefined ? 0 : Math.floor((days * 24) / hours))
}

function reportOf({ asOf }: Edition, reports: Reports | undefined, month: string): MonthReport {
  if (reports === undefined || month < reports.from) return { state: 'not-planned' }
  const dueDay = reportDue(month, reports.due.value).day
  const received = reports.received?.find((entry) => entry.month === month)
  if (received !== undefined)
    return received.on.day <= dueDay
      ? { state: 'in-time', days: 0 }
      : { state: 'late', days: received.on.day - dueDay }
  return { state: asOf.day <= dueDay ? 'not-due' : 'missing' }
}

function monthsBetween(from: string, to: string): string[] {
  const [first, last] = [monthNumber(from), monthNumber(to)]
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, step) => monthOfNumber(first + step))
}

/** Found as the check finds them; a gap belongs to the day of the lot after it. */
export function gapsOf(
  { id, record, unpublished, faultyNumbers }: SourceEntry,
  lots: readonly ListedLot[],
): NumberGap[] | null {
  // Where lots are on record and not shown, a missing number is no gap.
  if (record['lot-number-pattern'] === undefined || 0 < unpublished) return null
  const { looked, findings } = numberGaps({
    source: id,
    pattern: record['lot-number-pattern'],
    accounted: [...(record['numbers-not-used'] ?? []).map(({ number }) => number), ...faultyNumbers],
    lots,
  })
  if (looked === 0) return null
  return findings.flatMap(({ reason }) => {
    if (reason.code !== 'number-gap') return []
    const { first, last, missing, before, after } = reason.params
    const beside = after ?? before
    if (beside === null) return []
    const sampled = readMoment(beside.sampled)
    return [{ first, last, missing, sampled, month: monthOf(sampled) }]
  })
}
