import { describe, expect, it } from 'vitest'
import { fitsPattern, literalPattern } from '../../../src/core/measure/text-pattern.ts'

describe('literalPattern', () => {
  it('finds each sign of a regular expression as itself', () => {
    // biome-ignore lint/suspicious/noTemplateCurlyInString: these are the signs themselves.
    const text = '.*+?^${}()|[]\\'
    expect(new RegExp(`^${literalPattern(text)}$`).test(text)).toBe(true)
    expect(new RegExp(`^${literalPattern('a.c')}$`).test('abc')).toBe(false)
  })
})

describe('fitsPattern', () => {
  it.each([
    ['ash/A-1', 'ash/*', true],
    ['ash/A-1', '*', true],
    ['ash/A-1', 'ash/A-1', true],
    ['ash/A-10', 'ash/A-1', false],
    ['ashxA-1', 'ash.A-1', false],
    ['March\n2026', 'March*', true],
  ])('%j is as %j says: %j', (text, pattern, fits) => {
    expect(fitsPattern(text, pattern)).toBe(fits)
  })
})
