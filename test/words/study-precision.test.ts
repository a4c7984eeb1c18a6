import { describe, expect, it } from 'vitest'
import { lawText, levelSentence, ratingText, scoreCaution } from '../../src/words/study-precision.ts'

describe('lawText', () => {
  it('prints each equation, and how far the levels miss it', () => {
    const at = { intercept: 3.7, slope: -0.0113, misfit: 0.336 }
    expect(lawText({ ...at, law: 'linear' })).toBe('s = 3.70 − 0.0113 m; misses by 34 %')
    expect(lawText({ law: 'power', intercept: -1.5075, slope: 0.7702, misfit: 0 })).toBe(
      'log s = −1.508 + 0.770 log m; misses by 0 %',
    )
    expect(lawText({ ...at, law: 'constant' })).toBe('s = 3.70; misses by 34 %')
    expect(lawText({ ...at, slope: 0.02, law: 'proportional' })).toBe('s = 0.0200 m; misses by 34 %')
    expect(lawText(undefined)).toBe('cannot be fitted')
  })
})

describe('levelSentence', () => {
  it('names the range, and with fewer than five levels how weak it is', () => {
    expect(levelSentence(4, 74.8, 100.8)).toBe(
      '4 levels from 74.8 to 100.8 %; an equation holds between them and not beyond. With so few nearly every law runs close to all of them, and none is shown by it.',
    )
    expect(levelSentence(5, 74.8, 100.8)).not.toContain('With so few')
  })
})

describe('ratingText', () => {
  it('keeps the sign', () => {
    expect([5, -5, 4, -2, 0].map(ratingText)).toEqual(['5', '5', '4, high', '2, low', '0'])
  })
})

describe('scoreCaution', () => {
  it('says when the uncertainty of the mean may not be left aside', () => {
    expect(scoreCaution(6, 0.51)).toContain('uncertain by 0.51 robust deviations, more than the 0.3')
    expect(scoreCaution(30, 0.23)).not.toContain('more than')
  })
})
