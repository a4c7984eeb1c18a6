/** Dates and periods as they stand on a page. */
import { NO_BREAK } from './signs.ts'

/** Names alone: d3-time-format would add 4.5 KB to every script that prints a date. */
const MONTHS = 'January February March April May June July August September October November December'.split(
  ' ',
)

/** "8 March 2026"; with its clock time where there is one: "8 March 2026, 14:30". */
export function date(moment: string): string {
  const day = `${Number(moment.slice(8, 10))}${NO_BREAK}${MONTHS[Number(moment.slice(5, 7)) - 1] ?? ''} ${moment.slice(0, 4)}`
  const clock = clockTime(moment)
  return clock === null ? day : `${day}, ${clock}`
}

/** "14:30"; null for a bare date. */
export function clockTime(moment: string): string | null {
  return 10 < moment.length ? moment.slice(11, 16) : null
}

/** "8 Mar 2026", for tables. */
export function shortDate(moment: string): string {
  const month = MONTHS[Number(moment.slice(5, 7)) - 1] ?? ''
  return [Number(moment.slice(8, 10)), month.slice(0, 3), moment.slice(0, 4)].join(NO_BREAK)
}

/** A period, saying common parts once: "2 to 8 March 2026". */
export function period(from: string, to: string): string {
  const [start, end] = [from.slice(0, 10), to.slice(0, 10)]
  if (start === end) return date(start)
  if (start.slice(0, 7) === end.slice(0, 7)) return `${Number(start.slice(8, 10))} to ${date(end)}`
  return `${date(start)} to ${date(end)}`
}
