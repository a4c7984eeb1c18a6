import { describe, expect, it } from 'vitest'
import { storedReplacement, storedSentence, withPrintedDates } from '../../src/words/stored-text.ts'

describe('withPrintedDates', () => {
  it('rewrites dates inside a text and leaves other numbers', () => {
    expect(withPrintedDates('control NQ-2025-0205-23, due 2026-04-08')).toBe(
      'control NQ-2025-0205-23, due 8\u00a0April 2026',
    )
    expect(withPrintedDates('2026-03-02T06:00 to 2026-03-08')).toBe(
      '2\u00a0March 2026, 06:00 to 8\u00a0March 2026',
    )
  })
})

describe('storedSentence', () => {
  it('begins large, ends with one stop, and has the signs of units behind a number', () => {
    expect(storedSentence('mean of 10 preceding results 2.337 g/cm3, 41 ohm m')).toBe(
      'Mean of 10 preceding results 2.337 g/cm³, 41 Ω·m.',
    )
    expect(storedSentence('test recorded, result due 2026-04-08')).toBe(
      'Test recorded, result due 8\u00a0April 2026.',
    )
  })
  it('leaves a word that is no unit behind a number', () => {
    expect(storedSentence('the ohm m is a unit')).toBe('The ohm m is a unit.')
  })
})

describe('storedReplacement', () => {
  it('says that the share was replaced, by mass or by volume', () => {
    expect(storedReplacement('20 % of the cement by mass')).toBe('20 % of the cement replaced by mass')
    expect(storedReplacement('20 % of the cement by volume')).toBe('20 % of the cement replaced by volume')
  })
})
