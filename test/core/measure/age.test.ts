import { describe, expect, it } from 'vitest'
import { compareAges, isSameAge, readAge } from '../../../src/core/measure/age.ts'

describe('readAge', () => {
  it('reads hours and days, and keeps the text', () => {
    expect(readAge('28 d')).toMatchObject({ text: '28 d', hours: 672 })
    expect(readAge('72 h')).toMatchObject({ text: '72 h', hours: 72 })
    expect(JSON.stringify([readAge('7 d')])).toBe('["7 d"]')
    expect(`at ${readAge('7 d')}`).toBe('at 7 d')
  })
  it.each(['', '28', '28d', '28 days', '4 w', '-1 d', '1.5 d'])('refuses "%s"', (text) => {
    expect(() => readAge(text)).toThrow(RangeError)
  })
})

describe('compareAges and isSameAge', () => {
  it('order ages by their time and not by their text', () => {
    expect(['28 d', '7 d', '90 h', '3 d'].map(readAge).sort(compareAges).map(String)).toEqual([
      '3 d',
      '90 h',
      '7 d',
      '28 d',
    ])
  })
  it('take 72 h and 3 d as one, and no age as one with none alone', () => {
    expect(isSameAge(readAge('72 h'), readAge('3 d'))).toBe(true)
    expect(compareAges(readAge('72 h'), readAge('3 d'))).toBe(0)
    expect(isSameAge(readAge('72 h'), readAge('7 d'))).toBe(false)
    expect([isSameAge(undefined, undefined), isSameAge(undefined, readAge('7 d'))]).toEqual([true, false])
  })
})
