/** Dates that do not exist, and dates that run backwards. */
import { isInCalendar, isSurelyBefore, type Moment, readMoment } from '../../core/measure/moment.ts'
import type { FileReport } from '../diagnostics/report.ts'
import { below } from '../yaml/pointer.ts'

/** An earlier year is a slip of the pen. */
const EARLIEST = readMoment('1900-01-01')

/** Reports a date or time that no calendar or clock has. */
export function checkDate(moment: Moment | undefined, pointer: string, report: FileReport): boolean {
  if (moment === undefined || (isInCalendar(moment) && EARLIEST.day <= moment.day && isOnClock(moment)))
    return true
  report.at(
    pointer,
    'date',
    `${moment} is not a date of the calendar`,
    'check year, month, day and clock time',
  )
  return false
}

/** Reports a month of a year that is a slip of the pen. @param month as the schema has it, year-month */
export function checkMonth(month: string, pointer: string, report: FileReport): boolean {
  if (EARLIEST.day <= readMoment(`${month}-01`).day) return true
  report.at(pointer, 'date', `the month ${month} is before 1900`, 'check the year')
  return false
}

/** Hours, minutes, seconds; an offset is nowhere more than 14 hours. */
function isOnClock({ text }: Moment): boolean {
  const clock = text.slice(text.indexOf('T') + 1)
  if (clock === text) return true
  const [time = '', offset = '00:00'] = clock.split(/Z|[+-]/)
  const [hours = 0, minutes = 0, seconds = 0] = time.split(':').map(Number)
  const [aheadHours = 0, aheadMinutes = 0] = offset.split(':').map(Number)
  return hours < 24 && minutes < 60 && seconds < 60 && aheadHours <= 14 && aheadMinutes < 60
}

interface Order {
  readonly earlier: Moment | undefined
  readonly later: Moment | undefined
  readonly pointer: string
  readonly sentence: string
  /** Pointer of the earlier date, to be shown beside the later one. */
  readonly earlierAt?: string
}

/** Reports when `later` lies before `earlier`, both given. */
export function checkOrder(
  { earlier, later, pointer, sentence, earlierAt }: Order,
  report: FileReport,
): void {
  if (earlier === undefined || later === undefined || !isSurelyBefore(later, earlier)) return
  report.at(
    pointer,
    'dates-backwards',
    `${sentence}: ${later} is before ${earlier}`,
    'check both dates; one of them is wrong',
    earlierAt === undefined ? [] : [report.place(earlierAt, `${earlier}, which should come first`)],
  )
}

/** Reports a first or last day that no calendar has, and a period that ends before it begins. */
export function checkPeriod(
  { from, to }: { readonly from?: Moment; readonly to?: Moment },
  pointer: string,
  report: FileReport,
): void {
  checkEnds(
    { from, to, fromPointer: `${pointer}/from`, toPointer: `${pointer}/to` },
    'the period ends before it begins',
    report,
  )
}

interface Ends {
  readonly from: Moment | undefined
  readonly to: Moment | undefined
  readonly fromPointer: string
  readonly toPointer: string
}

/** The same of anything that begins and ends. @param sentence what is wrong where it ends before it begins */
export function checkEnds(
  { from, to, fromPointer, toPointer }: Ends,
  sentence: string,
  report: FileReport,
): void {
  const dated = [checkDate(from, fromPointer, report), checkDate(to, toPointer, report)]
  if (dated.every(Boolean))
    checkOrder({ earlier: from, later: to, pointer: toPointer, sentence, earlierAt: fromPointer }, report)
}

/** Reports a result that became known before its test. */
export function checkReported(
  { tested, reported }: { readonly tested?: Moment; readonly reported?: Moment },
  pointer: string,
  report: FileReport,
): void {
  const at = `${pointer}/reported`
  if (checkDate(reported, at, report))
    checkOrder(
      {
        ...{ earlier: tested, later: reported, pointer: at, earlierAt: `${pointer}/tested` },
        sentence: 'reported before it was tested',
      },
      report,
    )
}

interface Excludable {
  readonly excluded?: string
  readonly 'excluded-on'?: Moment
}

/**
 * Reports specimens or values that were excluded before they were tested, or on a day without a reason.
 * @param members by mark or property @param at pointer of them all
 */
export function checkExclusions(
  members: { readonly [name: string]: object | undefined } | undefined,
  tested: Moment | undefined,
  at: string,
  report: FileReport,
): void {
  for (const [name, member] of Object.entries(members ?? {})) {
    if (Array.isArray(member))
      checkExclusions(Object.fromEntries(member.entries()), tested, below(at, name), report)
    const { excluded, 'excluded-on': on } = (member ?? {}) as Excludable
    const pointer = `${below(at, name)}/excluded-on`
    if (on !== undefined && excluded === undefined)
      report.at(
        pointer,
        'key-missing',
        '"excluded" is missing beside "excluded-on"',
        'add excluded: with the reason, or remove the date',
      )
    if (checkDate(on, pointer, report))
      checkOrder({ earlier: tested, later: on, pointer, sentence: 'excluded before it was tested' }, report)
  }
}
