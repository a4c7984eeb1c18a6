import { describe, expect, it } from 'vitest'
import { sequenceDifferences } from './sequence-difference.ts'

const letters = (text: string) => [...text]
const stretches = (was: string, is: string) =>
  sequenceDifferences(letters(was), letters(is)).map((stretch) => [
    stretch.at,
    stretch.was.join(''),
    stretch.is.join(''),
  ])

describe('sequenceDifferences', () => {
  it.each([
    ['abcdef', 'abcdef', []],
    ['abcdef', 'abXdef', [[2, 'c', 'X']]],
    ['abcdef', 'abdef', [[2, 'c', '']]],
    ['abcdef', 'Xabcdef', [[0, '', 'X']]],
    ['abcdef', 'abcde', [[5, 'f', '']]],
    ['', 'ab', [[0, '', 'ab']]],
    [
      'abcdefgh',
      'aXcdeYgh',
      [
        [1, 'b', 'X'],
        [5, 'f', 'Y'],
      ],
    ],
  ])('tells how %j became %j', (was, is, expected) => {
    expect(stretches(was, is)).toEqual(expected)
  })

  it('leaves no element out where nothing agrees for long', () => {
    const [was, is] = [
      Array.from({ length: 1000 }, (_, place) => `was ${place}`),
      Array.from({ length: 900 }, (_, place) => `is ${place}`),
    ]
    const found = sequenceDifferences(was, is)
    expect([found.flatMap((stretch) => stretch.was), found.flatMap((stretch) => stretch.is)]).toEqual([
      was,
      is,
    ])
  })
})
