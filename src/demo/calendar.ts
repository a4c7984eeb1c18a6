/** Days of the scenario as texts and numbers. */
import { utcDay, utcFormat, utcMinute, utcWednesday } from 'd3'

const EPOCH = new Date(0)
const isoDate = utcFormat('%Y-%m-%d')
const clockTime = utcFormat('%H:%M')

/** Days since 1970-01-01 of a calendar date. */
export function dayOf(date: string): number {
  return utcDay.count(EPOCH, new Date(`${date}T00:00:00Z`))
}

export function dateOfDay(day: number): string {
  return isoDate(utcDay.offset(EPOCH, day))
}

/** "09:20" of whole minutes after midnight. */
export function clock(minutes: number): string {
  return clockTime(utcMinute.offset(EPOCH, minutes))
}

/** The next day, this one included, that is a Wednesday: laboratories of the scenario cast on Wednesdays. */
export function nextWednesday(day: number): number {
  return utcDay.count(EPOCH, utcWednesday.ceil(utcDay.offset(EPOCH, day)))
}

/** The same date a year on; the last of February where there is none. */
export function yearAfter(date: string): string {
  return `${Number(date.slice(0, 4)) + 1}${date.slice(4)}`.replace(/-02-29$/, '-02-28')
}
