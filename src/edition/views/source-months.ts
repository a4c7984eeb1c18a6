/** Samples, masses and reports of a source month by month, against what its record plans. */
import { daysBetween, lastDayOf, type Moment, monthOf, readMoment } from '../../core/measure/moment.ts'
import type { Edition, SourceEntry } from '../shape/edition.ts'
import { isInForce } from './last-lot.ts'
import type { SourceLot } from './source-lots.ts'

type Reports = NonNullable<SourceEntry['record']['reports']>

export interface MonthLine {
  /** "2026-03" */
  readonly month: string
  readonly lots: number
  /** Least number of composite samples that the plan asks for; null without a plan. */
  readonly planned: number | null
  readonly certifiedT: number
  readonly shippedT: number
  /** null where no ledger of diverted material is kept. */
  readonly divertedT: number | null
  readonly report: MonthReport
}

/** What became of the report on a month. */
export type MonthReport =
  | { readonly state: 'not-planned' | 'not-due' | 'missing' }
  | { readonly state: 'in-time' | 'late'; readonly days: number }

export interface SourceMonths {
  /** The last twelve months, oldest first. */
  readonly lines: readonly MonthLine[]
  /** Reports received after their day, of all months. */
  readonly late: number
  /** Months whose report has not come in time; null where none is planned. */
  readonly without: number | null
  /** Lot numbers between those used that no lot bears and no record gives up. */
  readonly gaps: readonly string[]
}

const SHOWN = 12

export function monthsOf(edition: Edition, source: SourceEntry, lots: readonly SourceLot[]): SourceMonths {
  const { reports } = source.record
  const newest = monthOf(edition.asOf)
  const reported = reports === undefined ? [] : monthsBetween(reports.from, newest)
  const states = reported.map((month) => reportOf(edition, reports, month).state)
  return {
    lines: monthLines(edition, source, lots, newest),
    late: states.filter((state) => state === 'late').length,
    without: reports === undefined ? null : states.filter((state) => state === 'missing').length,
    gaps: numberGaps(source, lots),
  }
}

function monthLines(
  edition: Edition,
  source: SourceEntry,
  lots: readonly SourceLot[],
  newest: string,
): MonthLine[] {
  const { record } = source
  const sampled = Map.groupBy(lots, ({ row }) => monthOf(row.sampled))
  const shipped = sums(
    lots.flatMap(({ shipments }) => shipments.map(({ date, massT }) => [date, massT] as const)),
  )
  const diverted = record.diverted && sums(record.diverted.map(({ on, mass }) => [on, mass.value] as const))
  return monthsBetween(earlier(newest, SHOWN - 1), newest).map((month) => {
    const own = sampled.get(month) ?? []
    const certifiedT = own.filter(({ row }) => isInForce(row)).reduce((sum, { row }) => sum + row.tonnes, 0)
    return {
      month,
      lots: own.length,
      planned: plannedSamples(source, certifiedT, month),
      certifiedT,
      shippedT: shipped.get(month) ?? 0,
      divertedT: diverted === undefined ? null : (diverted.get(month) ?? 0),
      report: reportOf(edition, record.reports, month),
    }
  })
}

function sums(entries: readonly (readonly [date: Moment, mass: number])[]): Map<string, number> {
  const found = new Map<string, number>()
  for (const [date, mass] of entries) {
    const month = monthOf(date)
    found.set(month, (found.get(month) ?? 0) + mass)
  }
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
  const dueDay = lastDayOf(month).day + Math.round(reports.due.value / 24)
  const received = reports.received?.find((entry) => entry.month === month)
  if (received !== undefined)
    return received.on.day <= dueDay
      ? { state: 'in-time', days: 0 }
      : { state: 'late', days: received.on.day - dueDay }
  return { state: asOf.day <= dueDay ? 'not-due' : 'missing' }
}

function monthsBetween(from: string, to: string): string[] {
  const [first, last] = [placeOf(from), placeOf(to)]
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, step) => monthAt(first + step))
}

function earlier(month: string, by: number): string {
  return monthAt(placeOf(month) - by)
}

function placeOf(month: string): number {
  const [year = 0, number = 1] = month.split('-').map(Number)
  return year * 12 + number - 1
}

function monthAt(place: number): string {
  return `${Math.floor(place / 12)}-${String((place % 12) + 1).padStart(2, '0')}`
}

/** Running numbers of one beginning, where the source states how its lots are numbered. */
function numberGaps({ record, unpublished }: SourceEntry, lots: readonly SourceLot[]): string[] {
  // Where lots are on record and not shown, a missing number is no gap.
  if (record['lot-number-pattern'] === undefined || 0 < unpublished) return []
  const givenUp = new Set(record['numbers-not-used']?.map(({ number }) => number))
  const parts = lots.flatMap(({ row }) => {
    const match = /^(.*?)(\d+)$/.exec(row.number)
    return match === null ? [] : [{ head: match[1] ?? '', digits: match[2] ?? '' }]
  })
  return [...Map.groupBy(parts, ({ head }) => head)]
    .flatMap(([head, own]) =>
      missingBetween(own.map(({ digits }) => digits)).map((digits) => `${head}${digits}`),
    )
    .filter((number) => !givenUp.has(number))
}

function missingBetween(digits: readonly string[]): string[] {
  const numbers = digits.map(Number).sort((a, b) => a - b)
  const [first = 0, last = 0] = [numbers[0], numbers.at(-1)]
  const there = new Set(numbers)
  const width = digits[0]?.length ?? 0
  return Array.from({ length: Math.max(0, last - first) }, (_, step) => first + step)
    .filter((number) => !there.has(number))
    .map((number) => String(number).padStart(width, '0'))
}
