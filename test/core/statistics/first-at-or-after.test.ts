import { describe, expect, it } from 'vitest'
import { firstAtOrAfter } from '../../../src/core/statistics/first-at-or-after.ts'

const own = (value: number) => value

describe('firstAtOrAfter', () => {
  it('finds the place before, on, between and after items, the first of equal ones', () => {
    const list = [1, 3, 3, 3, 7]
    expect([0, 1, 2, 3, 4, 7, 8].map((wanted) => firstAtOrAfter(list, own, wanted))).toEqual([
      0, 0, 1, 1, 4, 4, 5,
    ])
  })

  it('gives nought for an empty list', () => expect(firstAtOrAfter([], own, 5)).toBe(0))

  it('agrees with looking at every item, for dates too', () => {
    const days = ['2026-01-02', '2026-01-02', '2026-02-10', '2026-11-01']
    for (const wanted of ['2025-12-31', ...days, '2026-01-31', '2026-12-01']) {
      const plain = days.findIndex((day) => wanted <= day)
      expect(firstAtOrAfter(days, (day) => day, wanted)).toBe(plain === -1 ? days.length : plain)
    }
  })
})
