/**
 * Dates and wall-clock times as the records write them: "2026-03-11", "2026-03-11T09:20", seconds and offset
 * optional.
 * Nothing here reads a clock or the machine's time zone; texts were checked when the record was loaded.
 */

const MINUTES_A_DAY = 1440

/** The calendar date of a moment. */
export function dateOf(moment: string): string {
  return moment.slice(0, 10)
}

/** Whether a clock time is given. */
export function hasClock(moment: string): boolean {
  return 10 < moment.length
}

function dayNumber(moment: string): number {
  return (
    Date.UTC(Number(moment.slice(0, 4)), Number(moment.slice(5, 7)) - 1, Number(moment.slice(8, 10))) /
    86_400_000
  )
}

const OFFSET = /(?:(Z)|([+-])(\d{2}):(\d{2}))$/

/** Minutes ahead of UTC; undefined where the moment gives no offset. */
function offsetMinutes(moment: string): number | undefined {
  const match = hasClock(moment) ? OFFSET.exec(moment) : null
  if (match === null) return undefined
  if (match[1] === 'Z') return 0
  return (match[2] === '-' ? -1 : 1) * (Number(match[3]) * 60 + Number(match[4]))
}

/** Wall-clock minutes since 1970-01-01; a date alone counts from its midnight. */
function wallMinutes(moment: string): number {
  if (!hasClock(moment)) return dayNumber(moment) * MINUTES_A_DAY
  const seconds = moment[16] === ':' ? Number(moment.slice(17, 19)) : 0
  return (
    dayNumber(moment) * MINUTES_A_DAY +
    Number(moment.slice(11, 13)) * 60 +
    Number(moment.slice(14, 16)) +
    seconds / 60
  )
}

/**
 * Hours from one moment to another.
 * @returns null where either has no clock time: such an age cannot be verified
 * Note: offsets count only where both moments give one; otherwise both are wall-clock times of the same
 * place.
 */
export function hoursBetween(from: string, to: string): number | null {
  if (!hasClock(from) || !hasClock(to)) return null
  const fromOffset = offsetMinutes(from)
  const toOffset = offsetMinutes(to)
  const shift = fromOffset === undefined || toOffset === undefined ? 0 : fromOffset - toOffset
  return (wallMinutes(to) - wallMinutes(from) + shift) / 60
}

/** Whether a period with open or given ends, both included, holds a calendar date. */
export function inForce(period: { readonly from?: string; readonly to?: string }, date: string): boolean {
  return (period.from === undefined || period.from <= date) && (period.to === undefined || date <= period.to)
}

/** Whole calendar days from one moment's date to another's. */
export function daysBetween(from: string, to: string): number {
  return dayNumber(to) - dayNumber(from)
}

/**
 * Order of two moments: negative, zero, positive.
 * Note: where either has no clock time, dates alone are compared, so that the same day is never out of order.
 */
export function compareMoments(a: string, b: string): number {
  return hasClock(a) && hasClock(b) ? -(hoursBetween(a, b) ?? 0) : dayNumber(a) - dayNumber(b)
}

/** The calendar date some hours after a moment; a date without a clock counts from its midnight. */
export function addHours(moment: string, hours: number): string {
  return new Date((wallMinutes(moment) + hours * 60) * 60_000).toISOString().slice(0, 10)
}

/** Hours of a nominal age as written in a condition: "28 d" gives 672. */
export function ageHours(age: string): number {
  const amount = Number.parseInt(age, 10)
  return age.endsWith('d') ? amount * 24 : amount
}
