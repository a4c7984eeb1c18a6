/** Days of the scenario as texts and numbers. */
import { utcDay, utcFormat, utcMinute, utcWednesday } from 'd3'
import { momentOfDay, readMoment } from '../core/measure/moment.ts'

const EPOCH = new Date(0)
const clockTime = utcFormat('%H:%M')
const monthText = utcFormat('%Y-%m')

/** Days since 1970-01-01 of a calendar date. */
export function dayOf(date: string): number {
  return readMoment(date).day
}

export function dateOfDay(day: number): string {
  return momentOfDay(day).text
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
  return date.replace(/^\d{4}/, (year) => String(Number(year) + 1)).replace(/-02-29$/, '-02-28')
}

/** Day of the month, from 1. */
export function dayOfMonth(day: number): number {
  return utcDay.offset(EPOCH, day).getUTCDate()
}

/** Month of the year, from 0. */
export function monthFromZero(day: number): number {
  return utcDay.offset(EPOCH, day).getUTCMonth()
}

/** "2026-03". */
export function monthOf(day: number): string {
  return monthText(utcDay.offset(EPOCH, day))
}
