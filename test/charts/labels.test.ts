import { describe, expect, it } from 'vitest'
import { broken, rowsOf, shortened } from '../../src/charts/labels.ts'

describe('shortened', () => {
  it('cuts a text to its room with an ellipsis, and never leaves a blank before it', () => {
    // 6.2 px a letter: 31 px hold five letters.
    expect(shortened('abcde', 31)).toBe('abcde')
    expect(shortened('abcdef', 31)).toBe('abcd…')
    expect(shortened('abc def', 31)).toBe('abc…')
  })
})

describe('broken', () => {
  it('breaks between words where the next one has no room, but never within a word', () => {
    expect(broken('meets both', 62)).toEqual(['meets both'])
    expect(broken('meets both', 61)).toEqual(['meets', 'both'])
    expect(broken('everything', 1)).toEqual(['everything'])
  })
})

describe('rowsOf', () => {
  it('counts to the highest row, and 0 without labels', () => {
    const label = { text: '', x: 0, anchor: 'middle' } as const
    expect(
      rowsOf([
        { ...label, row: 1 },
        { ...label, row: 0 },
      ]),
    ).toBe(2)
    expect(rowsOf([])).toBe(0)
  })
})
