import { describe, expect, it } from 'vitest'
import { clock, dateOfDay, dayOf, nextWednesday, yearAfter } from '../../src/demo/calendar.ts'

describe('dayOf and dateOfDay', () => {
  it('count days from 1970-01-01, through leap days and back', () => {
    expect(dayOf('1970-01-01')).toBe(0)
    expect(dayOf('1970-02-01')).toBe(31)
    expect(dayOf('2024-03-01') - dayOf('2024-02-28')).toBe(2)
    expect(dateOfDay(dayOf('2024-02-29'))).toBe('2024-02-29')
    expect(dateOfDay(-1)).toBe('1969-12-31')
  })
})

describe('clock', () => {
  it('writes hours and minutes with two digits', () => {
    expect(clock(0)).toBe('00:00')
    expect(clock(9 * 60 + 5)).toBe('09:05')
  })
})

describe('nextWednesday', () => {
  it('is the day itself on a Wednesday, else the next one, before 1970 too', () => {
    // 2026-04-08 and 1969-12-31 were Wednesdays.
    expect(dateOfDay(nextWednesday(dayOf('2026-04-08')))).toBe('2026-04-08')
    expect(dateOfDay(nextWednesday(dayOf('2026-04-09')))).toBe('2026-04-15')
    expect(dateOfDay(nextWednesday(dayOf('1969-12-30')))).toBe('1969-12-31')
  })
})

describe('yearAfter', () => {
  it('gives the same date a year on, and 28 February for a leap day', () => {
    expect(yearAfter('2023-12-31')).toBe('2024-12-31')
    expect(yearAfter('2024-02-29')).toBe('2025-02-28')
  })
})
