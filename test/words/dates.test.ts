import { describe, expect, it } from 'vitest'
import { clockTime, date, period, shortDate } from '../../src/words/dates.ts'

describe('date', () => {
  it('writes day, month and year, with a clock time where there is one', () => {
    expect(date('2026-03-08')).toBe('8\u00a0March 2026')
    expect(date('2026-03-08T14:30')).toBe('8\u00a0March 2026, 14:30')
    expect(shortDate('2026-03-08T14:30')).toBe('8\u00a0Mar\u00a02026')
    expect(clockTime('2026-03-08T14:30')).toBe('14:30')
    expect(clockTime('2026-03-08')).toBeNull()
  })
  it('says the common parts of a period once', () => {
    expect(period('2026-03-02', '2026-03-08')).toBe('2 to 8\u00a0March 2026')
    expect(period('2026-03-02', '2026-03-02')).toBe('2\u00a0March 2026')
    expect(period('2026-02-26', '2026-03-04')).toBe('26\u00a0February 2026 to 4\u00a0March 2026')
  })
})
