import { describe, expect, it } from 'vitest'
import { defined } from '../../../src/core/measure/defined.ts'

describe('defined', () => {
  it('leaves out what is undefined, and keeps nought, the empty text, null and false in their order', () => {
    const members = { a: 0, b: undefined, c: '', d: null, e: false }
    expect(Object.entries(defined(members))).toEqual([
      ['a', 0],
      ['c', ''],
      ['d', null],
      ['e', false],
    ])
    expect(members).toHaveProperty('b')
  })
})
