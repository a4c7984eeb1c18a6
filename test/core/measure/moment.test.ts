import { describe, expect, it } from 'vitest'
import {
  addHours,
  compareMoments,
  dateOf,
  daysBetween,
  earliestOf,
  hoursBetween,
  inForce,
  isBy,
  isInCalendar,
  isLater,
  isSurelyBefore,
  laterOf,
  momentIn,
  momentOfDay,
  readMoment,
  yearOf,
} from '../../../src/core/measure/moment.ts'

const hours = (from: string, to: string) => hoursBetween(readMoment(from), readMoment(to))
const order = (a: string, b: string) => Math.sign(compareMoments(readMoment(a), readMoment(b)))
const surely = (a: string, b: string) => isSurelyBefore(readMoment(a), readMoment(b))

describe('readMoment', () => {
  it('reads day, minute and offset, and keeps the text', () => {
    expect(readMoment('1970-01-02')).toMatchObject({ text: '1970-01-02', day: 1, minute: null, offset: null })
    expect(readMoment('1970-01-02T09:20')).toMatchObject({ day: 1, minute: 560, offset: null })
    expect(readMoment('1970-01-01T00:00:30Z')).toMatchObject({ day: 0, minute: 0.5, offset: 0 })
    expect(readMoment('1970-01-01T00:00-05:30').offset).toBe(-330)
    expect(readMoment('1970-01-01T00:00+13:00').offset).toBe(780)
  })
  it('counts leap days by the rule of 4, 100 and 400 years', () => {
    expect(readMoment('2024-03-01').day - readMoment('2024-02-28').day).toBe(2)
    expect(readMoment('2000-03-01').day - readMoment('2000-02-28').day).toBe(2)
    expect(readMoment('1900-03-01').day - readMoment('1900-02-28').day).toBe(1)
  })
  it.each([
    '',
    '2026',
    '2026-3-11',
    '11.03.2026',
    '2026-03-11 09:20',
    '2026-03-11T9:20',
    '2026-03-11T09:20+1',
    ' 2026-03-11',
  ])('refuses "%s", and momentIn gives null', (text) => {
    expect(() => readMoment(text)).toThrow(RangeError)
    expect(momentIn(text)).toBeNull()
  })
  it('stands in JSON and in a sentence as it was written', () => {
    const moment = readMoment('2026-03-11T09:20:05+01:00')
    expect(JSON.stringify({ moment })).toBe('{"moment":"2026-03-11T09:20:05+01:00"}')
    expect(`tested ${moment}`).toBe('tested 2026-03-11T09:20:05+01:00')
  })
})

describe('isInCalendar', () => {
  const inCalendar = (text: string) => isInCalendar(readMoment(text))
  it('knows the length of each month, and leap days by the rule of 4, 100 and 400 years', () => {
    expect(['2024-02-29', '2000-02-29', '2026-01-31', '2026-12-31T23:59'].filter(inCalendar)).toHaveLength(4)
    expect(['2026-02-29', '1900-02-29', '2026-04-31', '2026-01-32'].filter(inCalendar)).toEqual([])
  })
  it('refuses a month or a day that is none, and takes the first century as it is', () => {
    expect(['2026-00-10', '2026-13-01', '2026-01-00'].filter(inCalendar)).toEqual([])
    expect(inCalendar('0026-01-10')).toBe(true)
    expect(readMoment('0026-01-10').day).toBeLessThan(readMoment('1900-01-01').day)
  })
})

describe('dateOf, momentOfDay and yearOf', () => {
  it('give the calendar date as written, whatever the offset', () => {
    expect(dateOf(readMoment('2026-03-11T23:30-10:00')).text).toBe('2026-03-11')
    expect(momentOfDay(readMoment('2024-02-29').day).text).toBe('2024-02-29')
    expect(yearOf(readMoment('2025-12-31T23:30-10:00'))).toBe('2025')
  })
})

describe('compareMoments', () => {
  it('puts a date alone first in its day, before midnight itself', () => {
    expect(order('2026-03-11', '2026-03-11T00:00')).toBe(-1)
    expect(order('2026-03-11T14:30', '2026-03-11')).toBe(1)
    expect(order('2026-03-11', '2026-03-10T23:59')).toBe(1)
    expect(order('2026-03-11', '2026-03-11')).toBe(0)
  })
  it('knows seconds and offsets: 12:00+02:00 is 10:00 in UTC', () => {
    expect(order('2026-03-11T09:20', '2026-03-11T09:20:01')).toBe(-1)
    expect(order('2026-03-11T09:20', '2026-03-11T09:20:00')).toBe(0)
    expect(order('2026-03-11T12:00+02:00', '2026-03-11T11:00Z')).toBe(-1)
    expect(order('2026-03-11T00:30+02:00', '2026-03-10T22:30Z')).toBe(0)
    expect(order('2026-03-11T00:30+02:00', '2026-03-10T23:00')).toBe(-1)
  })
  it('finds the earliest of several, and none of none', () => {
    const moments = ['2026-03-11T09:00', '2026-03-11', '2026-04-01'].map(readMoment)
    expect(earliestOf(moments)?.text).toBe('2026-03-11')
    expect(earliestOf([])).toBeUndefined()
  })
})

describe('isSurelyBefore', () => {
  it('asks the dates alone where a clock is missing, so that one day is never out of order', () => {
    expect([surely('2026-03-11', '2026-03-11T14:30'), surely('2026-03-11T14:30', '2026-03-11')]).toEqual([
      false,
      false,
    ])
    expect([surely('2026-03-10T23:59', '2026-03-11'), surely('2026-03-11', '2026-03-10T23:59')]).toEqual([
      true,
      false,
    ])
  })
  it('asks the clocks where both are there, and is false both ways for one moment', () => {
    expect(surely('2026-03-11T09:00', '2026-03-11T14:30')).toBe(true)
    expect(surely('2026-03-11T14:30', '2026-03-11T09:00')).toBe(false)
    expect(surely('2026-03-11T09:00', '2026-03-11T09:00')).toBe(false)
  })
  it('counts offsets only where both moments state one', () => {
    expect(surely('2026-03-11T12:00+02:00', '2026-03-11T11:00Z')).toBe(true)
    expect(surely('2026-03-11T12:00+02:00', '2026-03-11T11:00')).toBe(false)
    expect(surely('2026-03-11T11:00', '2026-03-11T12:00+02:00')).toBe(true)
  })
})

describe('the offset by which moments are put in order', () => {
  it('is taken where a moment states none: 23:30 at +02:00 is 21:30 in UTC', () => {
    const inParis = readMoment('2026-03-11T23:30', 120)
    expect(Math.sign(compareMoments(inParis, readMoment('2026-03-11T22:00Z', 120)))).toBe(-1)
    expect(Math.sign(compareMoments(readMoment('2026-03-11T23:30'), readMoment('2026-03-11T22:00Z')))).toBe(1)
    expect(Math.sign(compareMoments(dateOf(inParis), readMoment('2026-03-10T23:00Z')))).toBe(-1)
    expect(hoursBetween(inParis, readMoment('2026-03-12T00:30Z'))).toBe(1)
  })
})

describe('laterOf', () => {
  it('gives the later of two moments, by calendar date as written before all else', () => {
    const [east, west] = [readMoment('2026-03-12T00:30+09:00'), readMoment('2026-03-11T23:30Z')]
    expect(laterOf(west, east)).toBe(east)
    expect(laterOf(east, west)).toBe(east)
    expect(isLater(west, east)).toBe(false)
  })
})

describe('isBy and inForce', () => {
  const day = readMoment('2026-03-11')
  it('take the whole of the day in', () => {
    expect(isBy(readMoment('2026-03-11T23:59'), day)).toBe(true)
    expect(isBy(readMoment('2026-03-12'), day)).toBe(false)
    expect(inForce({ from: day, to: day }, readMoment('2026-03-11T14:30'))).toBe(true)
  })
  it('leave an end that is not stated open', () => {
    expect(inForce({}, day)).toBe(true)
    expect(inForce({ from: readMoment('2026-03-12') }, day)).toBe(false)
    expect(inForce({ to: readMoment('2026-03-10') }, day)).toBe(false)
  })
})

describe('hoursBetween', () => {
  it('counts wall-clock hours, over a leap day too', () => {
    expect(hours('2026-03-11T09:20', '2026-03-18T10:05')).toBe(168.75)
    expect(hours('2024-02-28T12:00', '2024-03-01T12:00')).toBe(48)
    expect(hours('2026-03-11T09:20:30', '2026-03-11T09:21')).toBeCloseTo(1 / 120, 12)
  })
  it('takes offsets into account only where both moments give one', () => {
    expect(hours('2026-03-28T12:00+01:00', '2026-03-29T12:00+02:00')).toBe(23)
    expect(hours('2026-03-28T12:00+01:00', '2026-03-29T12:00')).toBe(24)
    expect(hours('2026-03-28T12:00Z', '2026-03-28T12:00-05:00')).toBe(5)
  })
  it('is null where a clock time is missing', () => {
    expect(hours('2026-03-11', '2026-03-18T10:05')).toBeNull()
  })
})

describe('addHours and daysBetween', () => {
  const later = (text: string, add: number) => addHours(readMoment(text), add).text
  it('step over midnight, months and years', () => {
    expect(later('2026-03-11T09:20', 28 * 24)).toBe('2026-04-08')
    expect([later('2026-03-11T23:30', 0.49), later('2026-03-11T23:30', 0.5)]).toEqual([
      '2026-03-11',
      '2026-03-12',
    ])
    expect(later('2025-12-31', 24)).toBe('2026-01-01')
    expect(daysBetween(readMoment('2024-02-28T23:00'), readMoment('2024-03-01T01:00'))).toBe(2)
  })
})
