import { describe, expect, it } from 'vitest'
import { tPower } from '../../../src/core/statistics/t-power.ts'

describe('tPower', () => {
  // scipy 1.17.1: nct.sf(c, df, nc) + nct.cdf(-c, df, nc), c = t.ppf(1 - level / 2, df).
  it.each([
    [4, 12, 0.01, 1.5, 0.389222653738745],
    [4, 12, 0.05, 1.5, 0.6762361811073874],
    [5, 5, 0.05, 1, 0.2862954933805977],
    [2, 30, 0.01, 2, 0.5046254852523153],
    [20, 20, 0.05, 0.8, 0.6934041966153817],
    [1, 2, 0.05, 3, 0.1526963728867292],
  ])(
    'tPower of %s against %s at %s sees a shift of %s s in %s of cases',
    (first, second, level, shift, share) => {
      expect(tPower({ first, second, level, shift })).toBeCloseTo(share, 8)
    },
  )

  it('tPower of no shift is the level itself, and a shift down is seen like one up', () => {
    expect(tPower({ first: 4, second: 12, level: 0.01, shift: 0 })).toBeCloseTo(0.01, 9)
    expect(tPower({ first: 4, second: 12, level: 0.01, shift: -1.5 })).toBeCloseTo(0.389222653738745, 8)
  })

  it.each([
    [0, 5],
    [1, 1],
  ])('tPower refuses %s against %s', (first, second) => {
    expect(() => tPower({ first, second, level: 0.01, shift: 1 })).toThrow(
      `tPower needs results on both sides and three in all, got ${first} and ${second}`,
    )
  })
})
