import { describe, expect, it } from 'vitest'
import { inCalendar } from '../../../src/core/measure/calendar-date.ts'

describe('inCalendar', () => {
  it('knows the length of each month, and leap days by the rule of 4, 100 and 400 years', () => {
    expect(['2024-02-29', '2000-02-29', '2026-01-31', '2026-12-31T23:59'].filter(inCalendar)).toHaveLength(4)
    expect(['2026-02-29', '1900-02-29', '2026-04-31', '2026-01-32'].filter(inCalendar)).toEqual([])
  })
  it('refuses a month or a day that is none', () => {
    expect(['2026-00-10', '2026-13-01', '2026-01-00'].filter(inCalendar)).toEqual([])
  })
})
