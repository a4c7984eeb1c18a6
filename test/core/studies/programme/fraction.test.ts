import { describe, expect, it } from 'vitest'
import { crossedConditions, crossedCount } from '../../../../src/core/studies/programme/crossed.ts'
import {
  definingRelation,
  inseparable,
  mixedUpWith,
  productOf,
} from '../../../../src/core/studies/programme/fraction.ts'

/** Every column of signs of a fraction: effects that are mixed up have the same one, or its opposite. */
function columns(factors: readonly string[], words: readonly (readonly string[])[]): Map<string, string> {
  const runs = crossedConditions(
    factors.map((name) => ({ name, levels: ['l', 'h'] })),
    words,
  )
  const subsets = Array.from({ length: 2 ** factors.length }, (_, bits) =>
    factors.filter((_name, place) => (bits >> place) & 1),
  )
  return new Map(
    subsets.map((effect) => [
      effect.join(),
      runs
        .map(({ levels }) => effect.reduce((sign, name) => (levels.get(name) === 'h' ? sign : -sign), 1))
        .join(),
    ]),
  )
}

describe('mixedUpWith', () => {
  it('gives the aliases of the half fraction of five factors, I = ABCDE', () => {
    // Box, Hunter and Hunter 1978, 12.3: A = BCDE, AB = CDE (from memory, and held against all signs below).
    const words = [['E', 'A', 'B', 'C', 'D']]
    expect(mixedUpWith(['A'], words)).toEqual([['B', 'C', 'D', 'E']])
    expect(mixedUpWith(['A', 'B'], words)).toEqual([['C', 'D', 'E']])
  })
  it.each([
    ['a half', ['A', 'B', 'C'], [['C', 'A', 'B']]],
    [
      'a quarter',
      ['A', 'B', 'C', 'D', 'E'],
      [
        ['D', 'A', 'B'],
        ['E', 'A', 'C'],
      ],
    ],
    [
      'an eighth',
      ['A', 'B', 'C', 'D', 'E', 'F'],
      [
        ['D', 'A', 'B'],
        ['E', 'A', 'C'],
        ['F', 'B', 'C'],
      ],
    ],
  ])('names all effects of one column of signs and no other, in %s', (_, factors, words) => {
    const signs = columns(factors, words)
    for (const [effect, column] of signs) {
      const own = effect === '' ? [] : effect.split(',')
      const alike = [...signs].filter(([other, one]) => other !== effect && one === column)
      expect(
        mixedUpWith(own, words)
          .map((one) => one.join())
          .sort(),
      ).toEqual(alike.map(([other]) => other).sort())
    }
  })
})

describe('definingRelation', () => {
  it('has an empty product where words repeat each other', () => {
    expect(
      definingRelation([
        ['A', 'B'],
        ['B', 'A'],
      ]),
    ).toContainEqual([])
    expect(definingRelation([['A', 'B', 'C']])).not.toContainEqual([])
  })
  it('squares away what stands in both', () => {
    expect(productOf(['A', 'B'], ['B', 'C'])).toEqual(['A', 'C'])
    expect(productOf(['A', 'B'], ['B', 'A'])).toEqual([])
  })
})

describe('inseparable', () => {
  it('names a factor that stands for an interaction that is asked, and one that stands for the mean', () => {
    const words = [['C', 'A', 'B']]
    expect(inseparable([['A'], ['B'], ['C']], words)).toEqual([])
    expect(inseparable([['A'], ['C', 'B']], words)).toEqual([{ effect: ['A'], from: ['C', 'B'] }])
    expect(inseparable([['A']], [['A']])).toEqual([{ effect: ['A'], from: [] }])
  })
})

describe('crossedConditions', () => {
  const factors = [
    { name: 'replacement', levels: ['R30', 'R50'] },
    { name: 'temperature', levels: ['23', '40', '50'] },
    { name: 'cement', levels: ['A', 'B'] },
  ]
  it('makes every combination once, the last factor fastest', () => {
    const codes = crossedConditions(factors, []).map(({ code }) => code)
    expect(codes.slice(0, 4)).toEqual(['R30-23-A', 'R30-23-B', 'R30-40-A', 'R30-40-B'])
    expect(new Set(codes).size).toBe(12)
    expect(crossedCount(factors)).toBe(12)
  })
  it('keeps those in which the product of a word is high: both low, or both high', () => {
    const codes = crossedConditions(factors, [['cement', 'replacement']]).map(({ code }) => code)
    expect(codes).toEqual(['R30-23-A', 'R30-40-A', 'R30-50-A', 'R50-23-B', 'R50-40-B', 'R50-50-B'])
  })
})
