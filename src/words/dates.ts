/** Dates and periods as they stand on a page. */
import { type Moment, readMoment } from '../core/measure/moment.ts'
import { NO_BREAK } from './signs.ts'

/** Names alone: d3-time-format would add 4.5 KB to every script that prints a date. */
const MONTHS = 'January February March April May June July August September October November December'.split(
  ' ',
)

/** A date or time as the records have it, or as the text of it that issued documents and data files hold. */
type When = Moment | string

function momentOf(when: When): Moment {
  return typeof when === 'string' ? readMoment(when) : when
}

/** Year, month from 0 and day of the month as written. */
function calendarOf({ day }: Moment): { year: number; month: number; date: number } {
  const utc = new Date(day * 86_400_000)
  return { year: utc.getUTCFullYear(), month: utc.getUTCMonth(), date: utc.getUTCDate() }
}

/** "8 March 2026"; with its clock time where there is one: "8 March 2026, 14:30". */
export function date(when: When): string {
  const clock = clockTime(when)
  return clock === null ? day(momentOf(when)) : `${day(momentOf(when))}, ${clock}`
}

function day(moment: Moment): string {
  const { year, month, date } = calendarOf(moment)
  return `${date}${NO_BREAK}${MONTHS[month] ?? ''} ${year}`
}

/** "14:30"; null for a bare date. */
export function clockTime(when: When): string | null {
  const { minute } = momentOf(when)
  if (minute === null) return null
  return [minute / 60, minute % 60].map((part) => String(Math.floor(part)).padStart(2, '0')).join(':')
}

/** "8 Mar 2026", for tables. */
export function shortDate(when: When): string {
  const { year, month, date } = calendarOf(momentOf(when))
  return [date, (MONTHS[month] ?? '').slice(0, 3), year].join(NO_BREAK)
}

/** A period, saying common parts once: "2 to 8 March 2026". */
export function period(from: When, to: When): string {
  const [start, end] = [momentOf(from), momentOf(to)]
  if (start.day === end.day) return day(start)
  const [first, last] = [calendarOf(start), calendarOf(end)]
  return first.year === last.year && first.month === last.month
    ? `${first.date} to ${day(end)}`
    : `${day(start)} to ${day(end)}`
}

/** "March 2026". @param written year and month: "2026-03" */
export function month(written: string): string {
  const { year, month: place } = calendarOf(readMoment(`${written}-01`))
  return `${MONTHS[place] ?? ''} ${year}`
}

/** "March". @param place 1 for January */
export function monthName(place: number): string {
  return MONTHS[place - 1] ?? ''
}
