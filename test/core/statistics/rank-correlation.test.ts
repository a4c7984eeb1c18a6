import { describe, expect, it } from 'vitest'
import { meanRanks, rankCorrelation } from '../../../src/core/statistics/rank-correlation.ts'

describe('meanRanks', () => {
  it('gives equal values the mean of their ranks', () => {
    expect(meanRanks([3, 1, 3, 2, 3])).toEqual([4, 1, 4, 2, 4])
  })
  it('ranks infinite values on top, alike', () => {
    expect(meanRanks([Number.POSITIVE_INFINITY, 5, Number.POSITIVE_INFINITY])).toEqual([2.5, 1, 2.5])
  })
})

describe('rankCorrelation', () => {
  // scipy.stats.spearmanr 1.17 of the same lists, the two infinite ones as 1e9: 0.9452054794520549.
  it('agrees with scipy over ties in both lists', () => {
    const xs = [11, 7, 24, 18, 29, 201, 128, 128, 318, 236, 251]
    const top = Number.POSITIVE_INFINITY
    const ys = [45, 46, 47, 44, 49, 58, 57, 60, top, 90, top]
    expect(rankCorrelation(xs, ys)).toBeCloseTo(0.9452054794520549, 13)
  })
  // Without ties 1 − 6 Σd²/(n(n² − 1)): ranks 1 2 3 4 against 2 1 4 3, Σd² = 4, so 1 − 24/60.
  it('is 1 − 6 Σd²/(n³ − n) without ties', () => {
    expect(rankCorrelation([10, 20, 30, 40], [2, 1, 9, 5])).toBeCloseTo(0.6, 14)
  })
  it('turns its sign when one list is turned about', () => {
    const [xs, ys] = [
      [1, 5, 2, 8],
      [3, 4, 4, 9],
    ]
    const turned = ys.map((y) => -y)
    expect(rankCorrelation(xs, turned)).toBeCloseTo(-(rankCorrelation(xs, ys) ?? Number.NaN), 14)
  })
  it('is null where one list is the same throughout, and for two pairs', () => {
    expect(rankCorrelation([1, 2, 3], [4, 4, 4])).toBeNull()
    expect(rankCorrelation([1, 2], [3, 4])).toBeNull()
  })
})
