/** Dates that a calendar has. */

/**
 * Whether a month has the day.
 * @param text "YYYY-MM-DD", with or without a clock time behind it
 */
export function inCalendar(text: string): boolean {
  const [month, day] = [Number(text.slice(5, 7)), Number(text.slice(8, 10))]
  const date = new Date(Date.UTC(Number(text.slice(0, 4)), month - 1, day))
  return date.getUTCMonth() === month - 1 && date.getUTCDate() === day
}
