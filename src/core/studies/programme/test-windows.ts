/** When a mortar may be tested: its casting, the age, and the tolerance either way. */
import { type Moment, momentOfDay, readMoment } from '../../measure/moment.ts'
import type { PlannedAge } from './programme.ts'

export interface TestWindow {
  readonly planned: PlannedAge
  /** Day of the test, in days since 1970-01-01. */
  readonly day: number
  /** With clock times where the hour of casting is planned; else the days on which the window may lie. */
  readonly opens: Moment
  readonly closes: Moment
}

const MINUTES_A_DAY = 1440

/**
 * Window of an age.
 * @param castDay days since 1970-01-01
 * @param castMinute minute of the day at which water is added; null where it is not planned
 * Note: without the hour of casting, a tolerance of less than a day leaves the day of the test alone; the bench reckons
 * the hours from the hour that it writes down.
 */
export function testWindow(castDay: number, castMinute: number | null, planned: PlannedAge): TestWindow {
  const { age, withinHours } = planned
  const due = castDay * MINUTES_A_DAY + (castMinute ?? 0) + age.hours * 60
  const day = Math.floor(due / MINUTES_A_DAY)
  if (castMinute === null) {
    const days = Math.floor(withinHours / 24)
    return { planned, day, opens: momentOfDay(day - days), closes: momentOfDay(day + days) }
  }
  return {
    ...{ planned, day },
    opens: atMinute(due - withinHours * 60),
    closes: atMinute(due + withinHours * 60),
  }
}

function atMinute(minutes: number): Moment {
  const whole = Math.round(minutes)
  const ofDay = ((whole % MINUTES_A_DAY) + MINUTES_A_DAY) % MINUTES_A_DAY
  const clock = [Math.floor(ofDay / 60), ofDay % 60].map((part) => String(part).padStart(2, '0')).join(':')
  return readMoment(`${momentOfDay(Math.floor(whole / MINUTES_A_DAY)).text}T${clock}`)
}
