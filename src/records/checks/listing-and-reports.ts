/** What a source states of its years: listing, monthly reports, plans, phases and lot numbers that nobody used. */
import { nameInSource } from '../../core/measure/lot-id.ts'
import { momentIn } from '../../core/measure/moment.ts'
import type { FileReport } from '../diagnostics/report.ts'
import type { Source } from '../schema/loaded-records.ts'
import { checkDate, checkEnds, checkMonth, checkOrder, checkPeriod } from './dates.ts'
import type { AllRecords } from './references.ts'

/** @param id of the source */
export function checkYears(id: string, source: Source, all: AllRecords, report: FileReport): void {
  checkListing(source.listing ?? [], report)
  if (source.reports !== undefined) checkReports(source.reports, report)
  for (const key of ['verification-plan', 'phases'] as const)
    for (const [index, period] of (source[key] ?? []).entries())
      checkPeriod(period, `/${key}/${index}`, report)
  for (const [index, plan] of (source['verification-plan'] ?? []).entries())
    checkPlan(plan, `/verification-plan/${index}`, report)
  checkUnused(id, source['numbers-not-used'] ?? [], all, report)
}

type Plan = NonNullable<Source['verification-plan']>[number]

/** Visits are made for assurance, within the period; a level is one of comparing independent samples. */
function checkPlan({ kind, from, to, level, visits }: Plan, at: string, report: FileReport): void {
  const kinds = { level: 'independent', visits: 'assurance' } as const
  for (const [key, value] of Object.entries({ level, visits }) as [keyof typeof kinds, unknown][])
    if (value !== undefined && kind !== kinds[key])
      report.at(
        `${at}/${key}`,
        'key-unknown',
        `${key} belongs to a plan of kind ${kinds[key]}, and this one is of kind ${kind}`,
        `remove ${key}, or correct the kind`,
      )
  for (const [index, { on }] of (visits ?? []).entries()) {
    const pointer = `${at}/visits/${index}/on`
    if (!checkDate(on, pointer, report)) continue
    checkOrder({ earlier: from, later: on, pointer, sentence: 'the visit comes before its period' }, report)
    checkOrder({ earlier: on, later: to, pointer, sentence: 'the period ends before the visit' }, report)
  }
}

/** Each entry after the one before it; which action may follow which, agencies decide. */
function checkListing(listing: NonNullable<Source['listing']>, report: FileReport): void {
  for (const [index, { date, to, 'next-review': review }] of listing.entries()) {
    const at = `/listing/${index}`
    checkEnds(
      { from: date, to, fromPointer: `${at}/date`, toPointer: `${at}/to` },
      'the listing ends before it begins',
      report,
    )
    if (checkDate(review, `${at}/next-review`, report))
      checkOrder(
        {
          earlier: date,
          later: review,
          pointer: `${at}/next-review`,
          sentence: 'the next review comes before the entry',
        },
        report,
      )
    checkOrder(
      {
        earlier: listing[index - 1]?.date,
        later: date,
        pointer: `${at}/date`,
        sentence: 'the entry comes before the one above it',
      },
      report,
    )
  }
}

/** A month is reported once, and not before it has begun. */
function checkReports({ from, received = [] }: NonNullable<Source['reports']>, report: FileReport): void {
  checkMonth(from, '/reports/from', report)
  const months = new Map<string, number>()
  for (const [index, { month, on }] of received.entries()) {
    const at = `/reports/received/${index}`
    if (!checkMonth(month, `${at}/month`, report)) continue
    const first = months.get(month)
    if (first === undefined) months.set(month, index)
    else
      report.at(
        `${at}/month`,
        'duplicate-id',
        `two reports are for ${month}`,
        'record each month once, with the day on which its report was first received',
        [report.place(`/reports/received/${first}/month`, 'the first report for this month')],
      )
    if (month < from)
      report.at(
        `${at}/month`,
        'dates-backwards',
        `the report is for ${month}, and reports are due from ${from} on`,
        'correct the month, or the first month that a report is due for',
        [report.place('/reports/from', 'the first month that a report is due for')],
      )
    if (checkDate(on, `${at}/on`, report))
      checkOrder(
        {
          earlier: momentIn(`${month}-01`) ?? undefined,
          later: on,
          pointer: `${at}/on`,
          sentence: 'received before its month began',
        },
        report,
      )
  }
}

type Unused = NonNullable<Source['numbers-not-used']>

/** A number that was not used is on no lot, and stands once. */
function checkUnused(id: string, unused: Unused, all: AllRecords, report: FileReport): void {
  if (unused.length === 0) return
  const borne = new Map(
    [...all.lots].flatMap(([lot, { number = nameInSource(lot) }]) =>
      lot.startsWith(`${id}/`) ? [[numberKey(number), lot] as const] : [],
    ),
  )
  const seen = new Map<string, number>()
  for (const [index, { number, on }] of unused.entries()) {
    const at = `/numbers-not-used/${index}`
    const lot = borne.get(numberKey(number))
    if (lot !== undefined)
      report.at(
        `${at}/number`,
        'duplicate-number',
        `the lot number ${number} is used by ${lot}`,
        'remove the entry, or correct the number',
        [
          all.place('lot', lot, '/number', 'the lot that bears it') ??
            all.place('lot', lot, '', 'the lot that bears it'),
        ],
      )
    const first = seen.get(numberKey(number))
    if (first === undefined) seen.set(numberKey(number), index)
    else
      report.at(
        `${at}/number`,
        'duplicate-number',
        `the lot number ${number} is listed twice as not used`,
        'list each number once',
        [report.place(`/numbers-not-used/${first}/number`, 'the first entry of this number')],
      )
    checkDate(on, `${at}/on`, report)
  }
}

/** One number typed in full width or with a ligature reads as the other. */
function numberKey(number: string): string {
  return number.normalize('NFKC').toLowerCase()
}
