import { expect, it } from 'vitest'
import { LastUsed } from '../../../src/core/measure/last-used.ts'

/** Asks for keys one after the other, each of weight 1 unless stated, and lists those that were made. */
function madeBy(most: number, asked: readonly string[], weights: Readonly<Record<string, number>> = {}) {
  const values = new LastUsed<string>(most)
  const made: string[] = []
  for (const key of asked) {
    const value = values.of(
      key,
      () => weights[key] ?? 1,
      () => {
        made.push(key)
        return key.toUpperCase()
      },
    )
    expect(value).toBe(key.toUpperCase())
  }
  return made.join('')
}

it('LastUsed makes a value once while it is kept', () => {
  expect(madeBy(Number.POSITIVE_INFINITY, ['a', 'b', 'a', 'c', 'b', 'a'])).toBe('abc')
})

it('LastUsed lets go what was not used for longest', () => {
  // c is the third of two: b goes, since a was used after it.
  expect(madeBy(2, ['a', 'b', 'a', 'c', 'a', 'b'])).toBe('abcb')
})

it('LastUsed keeps the value that was used last, although it weighs more than all may', () => {
  expect(madeBy(2, ['a', 'b', 'b', 'a'], { b: 5 })).toBe('aba')
})

const one = () => 1

it('LastUsed counts a value that is made while another is being made', () => {
  const values = new LastUsed<number>(1)
  expect(values.of('outer', one, () => 1 + values.of('inner', one, () => 1))).toBe(2)
  expect(values.of('outer', one, () => 0)).toBe(2)
  expect(values.of('inner', one, () => 7)).toBe(7)
})
