import { describe, expect, it } from 'vitest'
import {
  meanUncertainty,
  scoreRating,
  scoreStanding,
} from '../../../../src/core/studies/interlaboratory/score-rating.ts'

describe('scoreStanding', () => {
  it('takes 2 as satisfactory and 3 as unsatisfactory, on either side', () => {
    expect([2, -2, 2.001, -2.999, 3, -3].map(scoreStanding)).toEqual([
      'satisfactory',
      'satisfactory',
      'questionable',
      'questionable',
      'unsatisfactory',
      'unsatisfactory',
    ])
  })
})

describe('scoreRating', () => {
  // The table of "Proficiency sample ratings", AASHTO re:source, October 2010: each end belongs to the better rating.
  it('follows the printed table, with the sign of z', () => {
    expect([0, 1, 1.01, 1.5, 1.6, 2, 2.1, 2.5, 2.6, 3, 3.01].map(scoreRating)).toEqual([
      5, 5, 4, 4, 3, 3, 2, 2, 1, 1, 0,
    ])
    expect([-0.5, -1.2, -2.3, -2.7, -9].map(scoreRating)).toEqual([-5, -4, -2, -1, 0])
  })
})

describe('meanUncertainty', () => {
  // 1.25/√6 = 0.5103; at 18 laboratories it falls below 0.3.
  it('falls with the root of the laboratories', () => {
    expect(meanUncertainty(6)).toBeCloseTo(0.5103, 4)
    expect(meanUncertainty(17)).toBeGreaterThan(0.3)
    expect(meanUncertainty(18)).toBeLessThan(0.3)
  })
})
