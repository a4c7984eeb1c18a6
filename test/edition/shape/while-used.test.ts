import { describe, expect, it } from 'vitest'
import { whileUsed } from '../../../src/edition/shape/while-used.ts'

describe('whileUsed', () => {
  it('makes a value once for all that ask while one of them holds it', () => {
    let made = 0
    const lotOf = whileUsed((id) => {
      made += 1
      return { id }
    })
    const [first, second, other] = ['a', 'a', 'b'].map(lotOf)
    expect(second).toBe(first)
    expect([first, other]).toEqual([{ id: 'a' }, { id: 'b' }])
    expect(made).toBe(2)
  })
})
