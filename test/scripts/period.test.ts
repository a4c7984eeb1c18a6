import { describe, expect, it } from 'vitest'
import { readMoment } from '../../src/core/measure/moment.ts'
import { liesWithin, periodOf } from '../../src/scripts/period.ts'

const typed = (from: string, to: string) => periodOf((name) => (name === 'from' ? from : to))

describe('periodOf', () => {
  it('reads each field that holds a date', () => {
    expect(typed('2026-01-01', '2026-02-09')).toEqual({
      from: readMoment('2026-01-01'),
      to: readMoment('2026-02-09'),
    })
  })
  it('asks for nothing where a field is empty, or holds what no calendar writes so', () => {
    expect(typed('', '')).toEqual({})
    expect(typed('12026-01-01', '9 Feb')).toEqual({})
  })
})

describe('liesWithin', () => {
  it('takes the first and the last day in, with whatever clock time', () => {
    const period = typed('2026-01-01', '2026-02-09')
    expect(
      ['2025-12-31', '2026-01-01', '2026-02-09T23:30', '2026-02-10'].map((day) =>
        liesWithin(readMoment(day), period),
      ),
    ).toEqual([false, true, true, false])
  })
  it('takes in a day that is not known', () => {
    expect(liesWithin(null, typed('2026-01-01', ''))).toBe(true)
  })
})
