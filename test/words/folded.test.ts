import { expect, it } from 'vitest'
import { folded } from '../../src/words/folded.ts'

const COWS = ['cow', 'cows'] as const

it('folded keeps a list that fills the screen and no more', () => {
  expect(folded([['a', 'b'], ['c']], COWS, 3)).toEqual(['a', 'b', 'c'])
  expect(folded([], COWS, 3)).toEqual([])
})

it('folded counts what it leaves out, and keeps the lines of an entry together', () => {
  expect(folded([['a'], ['b', 'c'], ['d']], COWS, 2)).toEqual(['a', '... and 2 more cows; --all shows them'])
  expect(folded([['a'], ['b']], COWS, 1)).toEqual(['a', '... and 1 more cow; --all shows them'])
})

it('folded shows the first entry whole, however long', () => {
  expect(folded([['a', 'b', 'c'], ['d']], COWS, 2)).toEqual([
    'a',
    'b',
    'c',
    '... and 1 more cow; --all shows them',
  ])
})

it('folded shows all of a list without an end of the screen', () => {
  expect(folded([['a'], ['b']], COWS, Number.POSITIVE_INFINITY)).toEqual(['a', 'b'])
})
