import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { changedStretch } from '../../../src/scripts/bench/text-view.ts'

describe('changedStretch', () => {
  it('finds the one stretch that differs', () => {
    expect(changedStretch('a: 1 kN\n', 'a: 12 kN\n')).toEqual({ from: 4, to: 4, insert: '2' })
    expect(changedStretch('aa', 'a')).toEqual({ from: 1, to: 2, insert: '' })
  })

  it('makes one text of the other, whatever they are', () => {
    const text = fc.array(fc.constantFrom('a', 'b', '\n'), { maxLength: 9 }).map((signs) => signs.join(''))
    fc.assert(
      fc.property(text, text, (before, after) => {
        const { from, to, insert } = changedStretch(before, after)
        expect(before.slice(0, from) + insert + before.slice(to)).toBe(after)
      }),
      { seed: 109 },
    )
  })
})
