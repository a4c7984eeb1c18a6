/** Days of the scenario as texts and numbers. */

/** Days since 1970-01-01 of a calendar date. */
export function dayOf(date: string): number {
  return Date.parse(`${date}T00:00:00Z`) / 86_400_000
}

export function dateOfDay(day: number): string {
  return new Date(day * 86_400_000).toISOString().slice(0, 10)
}

/** "09:20" of minutes after midnight. */
export function clock(minutes: number): string {
  return `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(Math.round(minutes) % 60).padStart(2, '0')}`
}

/** The next day, this one included, that is a Wednesday: laboratories of the scenario cast on Wednesdays. */
export function nextWednesday(day: number): number {
  return day + ((6 - (day % 7) + 7) % 7)
}
