import { describe, expect, it } from 'vitest'
import { checkAge } from '../../../src/core/measure/age.ts'
import {
  addHours,
  ageHours,
  compareMoments,
  daysBetween,
  hoursBetween,
} from '../../../src/core/measure/moment.ts'

describe('hoursBetween', () => {
  it('counts wall-clock hours, over a leap day too', () => {
    expect(hoursBetween('2026-03-11T09:20', '2026-03-18T10:05')).toBe(168.75)
    expect(hoursBetween('2024-02-28T12:00', '2024-03-01T12:00')).toBe(48)
  })
  it('takes offsets into account only where both moments give one', () => {
    expect(hoursBetween('2026-03-28T12:00+01:00', '2026-03-29T12:00+02:00')).toBe(23)
    expect(hoursBetween('2026-03-28T12:00+01:00', '2026-03-29T12:00')).toBe(24)
    expect(hoursBetween('2026-03-28T12:00Z', '2026-03-28T12:00-05:00')).toBe(5)
  })
  it('is null where a clock time is missing', () => {
    expect(hoursBetween('2026-03-11', '2026-03-18T10:05')).toBeNull()
  })
})

describe('compareMoments', () => {
  it('never puts a date alone out of order with a time of the same day', () => {
    expect(compareMoments('2026-03-11T14:30', '2026-03-11')).toBe(0)
    expect(compareMoments('2026-03-11T14:30', '2026-03-11T09:00')).toBeGreaterThan(0)
    expect(compareMoments('2026-03-10', '2026-03-11T09:00')).toBeLessThan(0)
  })
})

describe('addHours and daysBetween', () => {
  it('step over months and years', () => {
    expect(addHours('2026-03-11T09:20', ageHours('28 d'))).toBe('2026-04-08')
    expect(addHours('2025-12-31', 24)).toBe('2026-01-01')
    expect(daysBetween('2024-02-28', '2024-03-01')).toBe(2)
  })
})

describe('checkAge', () => {
  it('is within on the very limit of the tolerance and outside a minute beyond', () => {
    expect(checkAge('2026-03-11T09:00', '2026-03-18T12:00', '7 d', 3).check).toBe('within')
    expect(checkAge('2026-03-11T09:00', '2026-03-18T12:01', '7 d', 3).check).toBe('outside')
    expect(checkAge('2026-03-11T09:00', '2026-03-18T06:00', '7 d', 3).check).toBe('within')
  })
  it('cannot be verified from dates alone, unless they put the age out of reach', () => {
    expect(checkAge('2026-03-11', '2026-03-18', '7 d', 3).check).toBe('cannot-be-verified')
    expect(checkAge('2026-03-11', '2026-03-20', '7 d', 3).check).toBe('outside')
  })
})
