/**
 * Dates and wall-clock times as records write them: "2026-03-11", "2026-03-11T09:20", seconds and offset
 * optional. A text is read once, when its record is loaded; nothing here reads a clock or the machine's time
 * zone.
 */

/** What a moment is made of. */
interface Parts {
  readonly text: string
  readonly day: number
  readonly minute: number | null
  readonly offset: number | null
  readonly sortedAt: number
}

/** A date, or a date with a wall-clock time. In JSON it is its text. */
export class Moment {
  /** As written in the record. */
  readonly text: string
  /** Calendar date as written, in days since 1970-01-01. */
  readonly day: number
  /** Wall-clock minutes since midnight; null for a date alone. */
  readonly minute: number | null
  /** Minutes ahead of UTC; null where the moment states no offset. */
  readonly offset: number | null
  /** Minutes ahead of UTC that sorting takes where none is stated: those of the site. */
  readonly sortedAt: number

  constructor({ text, day, minute, offset, sortedAt }: Parts) {
    this.text = text
    this.day = day
    this.minute = minute
    this.offset = offset
    this.sortedAt = sortedAt
  }

  toJSON(): string {
    return this.text
  }

  toString(): string {
    return this.text
  }
}

const MINUTES_A_DAY = 1440
const MILLISECONDS_A_DAY = 86_400_000

/** Captures: year, month, day, hour, minute, second, offset. */
const MOMENT = /^(\d{4})-(\d{2})-(\d{2})(?:T(\d{2}):(\d{2})(?::(\d{2}))?(Z|[+-]\d{2}:\d{2})?)?$/

/**
 * Reads a moment as a record writes it.
 * @param text date, or date and time, in the form that schemas/common.json asks for
 * @param sortedAt minutes ahead of UTC that sorting takes where the text states no offset
 * @throws RangeError for any other text; loading has refused it before
 * Note: a date that no calendar has, such as 30 February, counts on into the next month; loading reports it.
 */
export function readMoment(text: string, sortedAt = 0): Moment {
  const moment = momentIn(text, sortedAt)
  if (moment === null) throw new RangeError(`readMoment needs a date or a date and time, got "${text}"`)
  return moment
}

/**
 * The same for a text that nobody has checked; null where it is no moment.
 * @param text any
 * @param sortedAt as of `readMoment`
 */
export function momentIn(text: string, sortedAt = 0): Moment | null {
  const match = MOMENT.exec(text)
  if (match === null) return null
  const [, year, month, date, hour, minute, second = '0', offset] = match
  return new Moment({
    text,
    day: new Date(0).setUTCFullYear(Number(year), Number(month) - 1, Number(date)) / MILLISECONDS_A_DAY,
    minute: hour === undefined ? null : Number(hour) * 60 + Number(minute) + Number(second) / 60,
    offset: offset === undefined ? null : offsetMinutes(offset),
    sortedAt,
  })
}

/**
 * Minutes ahead of UTC.
 * @param offset "Z" or "+02:00", in the form that the schemas ask for
 * @returns negative west of Greenwich
 */
export function offsetMinutes(offset: string): number {
  if (offset === 'Z') return 0
  const [hours = '', minutes = ''] = offset.slice(1).split(':')
  return (offset.startsWith('-') ? -1 : 1) * (Number(hours) * 60 + Number(minutes))
}

/**
 * The date of a day number as a moment without a clock time.
 * @param day days since 1970-01-01
 * @param sortedAt as of `readMoment`
 */
export function momentOfDay(day: number, sortedAt = 0): Moment {
  const text = new Date(day * MILLISECONDS_A_DAY).toISOString().slice(0, 10)
  return new Moment({ text, day, minute: null, offset: null, sortedAt })
}

/** Whether the calendar has the date as written; 30 February is none. */
export function isInCalendar({ text, day }: Moment): boolean {
  const counted = new Date(day * MILLISECONDS_A_DAY)
  return (
    counted.getUTCDate() === Number(text.slice(8, 10)) &&
    counted.getUTCMonth() === Number(text.slice(5, 7)) - 1
  )
}

/**
 * The last day of a calendar month.
 * @param month "2026-03", in the form that schemas/common.json asks for
 * @returns date without a clock time
 */
export function lastDayOf(month: string): Moment {
  const [year = 0, number = 1] = month.split('-').map(Number)
  return momentOfDay(new Date(0).setUTCFullYear(year, number, 0) / MILLISECONDS_A_DAY)
}

/** The calendar date of a moment, as written. */
export function dateOf(moment: Moment): Moment {
  return moment.minute === null ? moment : momentOfDay(moment.day, moment.sortedAt)
}

/** The calendar year of a moment, as written: "2026". */
export function yearOf(moment: Moment): string {
  return moment.text.slice(0, 4)
}

/** The calendar month of a moment, as written: "2026-03". */
export function monthOf(moment: Moment): string {
  return moment.text.slice(0, 7)
}

/**
 * The number of a calendar month, to reckon with.
 * @param month "2026-03", in the form that schemas/common.json asks for
 * @returns a whole number, one more for each month later; January's divide by twelve
 */
export function monthNumber(month: string): number {
  const [year = 0, number = 1] = month.split('-').map(Number)
  return 12 * year + number - 1
}

/**
 * The calendar month of a number.
 * @param number of `monthNumber`
 * @returns "2026-03"
 */
export function monthOfNumber(number: number): string {
  const [year, month] = [Math.floor(number / 12), (number % 12) + 1]
  return `${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}`
}

/**
 * The order in which moments are sorted.
 * @returns negative, zero, positive
 * Notes: 1. a date alone comes first in its day; 2. a moment without an offset is taken at the site's, so
 * that the order is one for all; 3. whether one moment surely lies before another is asked of `isSurelyBefore`.
 */
export function compareMoments(a: Moment, b: Moment): number {
  return sortingMinutes(a) - sortingMinutes(b) || Number(a.minute !== null) - Number(b.minute !== null)
}

function sortingMinutes({ day, minute, offset, sortedAt }: Moment): number {
  return day * MINUTES_A_DAY + (minute ?? 0) - (offset ?? sortedAt)
}

/**
 * Whether one moment lies before another whatever is not on record.
 * Notes: 1. where either is a date alone, the dates decide, so that one day is never out of order; 2. offsets
 * count only where both moments state one.
 */
export function isSurelyBefore(a: Moment, b: Moment): boolean {
  const hours = hoursBetween(a, b)
  return hours === null ? a.day < b.day : 0 < hours
}

/**
 * Whether a moment lies on a calendar date or before it.
 * @param date as-of date or another date alone
 */
export function isBy(moment: Moment, date: Moment): boolean {
  return moment.day <= date.day
}

/**
 * Hours from one moment to another.
 * @returns null where either has no clock time: such an age cannot be verified
 * Note: offsets count only where both moments give one; otherwise both are wall-clock times of one place.
 */
export function hoursBetween(from: Moment, to: Moment): number | null {
  if (from.minute === null || to.minute === null) return null
  const shift = from.offset === null || to.offset === null ? 0 : from.offset - to.offset
  return (daysBetween(from, to) * MINUTES_A_DAY + to.minute - from.minute + shift) / 60
}

/**
 * Calendar days from one moment's date to another's.
 * @returns whole, negative where `to` is the earlier; clock times and offsets do not count
 */
export function daysBetween(from: Moment, to: Moment): number {
  return to.day - from.day
}

/**
 * The calendar date some hours after a moment; a date without a clock counts from its midnight.
 * @param hours of either sign
 */
export function addHours(moment: Moment, hours: number): Moment {
  const day = moment.day + Math.floor(((moment.minute ?? 0) + hours * 60) / MINUTES_A_DAY)
  return momentOfDay(day, moment.sortedAt)
}

/** Whether a period with open or given ends, both included, holds a calendar date. */
export function inForce(period: { readonly from?: Moment; readonly to?: Moment }, date: Moment): boolean {
  return (
    (period.from === undefined || period.from.day <= date.day) &&
    (period.to === undefined || date.day <= period.to.day)
  )
}

/** The first of moments by `compareMoments`; undefined without any. */
export function earliestOf(moments: readonly Moment[]): Moment | undefined {
  return moments.toSorted(compareMoments)[0]
}

/**
 * The moment by which both have come.
 * @returns the one of the later calendar date, of one date the later by `compareMoments`, `a` where they are alike
 */
export function laterOf(a: Moment, b: Moment): Moment {
  return isLater(b, a) ? b : a
}

/** Whether a moment is of a later calendar date than another, or of the same and later by `compareMoments`. */
export function isLater(moment: Moment, than: Moment): boolean {
  return 0 < (moment.day - than.day || compareMoments(moment, than))
}
