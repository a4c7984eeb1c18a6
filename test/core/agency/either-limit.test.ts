/** A clause that takes either of two ages: one age alone beyond its limit puts nobody on opposite sides of it. */
import { describe, expect, it } from 'vitest'
import { areOpposite, pairsOfLot } from '../../../src/core/agency/pairs.ts'
import { readAge } from '../../../src/core/measure/age.ts'
import { sidesWords } from '../../../src/words/agency.ts'
import { result, setOf } from '../judging/fixture.ts'
import { agencys, lotOf } from './fixture.ts'

const EITHER = setOf([
  {
    clause: 'activity',
    'any-of': ['7 d', '28 d'].map((age) => ({
      clause: `at-${age.replace(' ', '-')}`,
      property: 'strength-activity-index' as const,
      condition: 'c311',
      age: readAge(age),
      'at-least': '75 %',
    })),
  },
])
const at = (age: string) => ({ condition: 'c311', age: readAge(age) })
const index = (value: number, age: string) => result('strength-activity-index', value, at(age))
const agencyIndex = (value: number, age: string) => agencys('strength-activity-index', value, at(age))

function pairsOf(results: Parameters<typeof lotOf>[1]) {
  return pairsOfLot(lotOf(1, results, { criterion: EITHER }), [])
}

describe('withOtherWays', () => {
  it('puts a sample of 74.1 % at 7 d and 87.7 % at 28 d on the side of a lot that meets at both', () => {
    const pairs = pairsOf([
      index(76, '7 d'),
      index(88, '28 d'),
      agencyIndex(74.1, '7 d'),
      agencyIndex(87.7, '28 d'),
    ])
    expect(pairs.map(areOpposite)).toEqual([false, false])
    const words = pairs.flatMap(({ sides }) => sides.map(sidesWords)).join(' | ')
    expect(words.replaceAll('\u00a0', ' ')).toBe(
      'at least 75 %: the producer’s meets, the agency’s would not meet; the clause takes either result, and both sides meet it by one | at least 75 %: both meet',
    )
  })

  it('keeps them opposite where the sample meets at neither age', () => {
    const pairs = pairsOf([
      index(76, '7 d'),
      index(88, '28 d'),
      agencyIndex(70, '7 d'),
      agencyIndex(72, '28 d'),
    ])
    expect(pairs.map(areOpposite)).toEqual([true, true])
    expect(pairs[0]?.sides[0]?.otherWay).toBe('changes-nothing')
  })

  it('keeps them opposite, and says why, where the sample was tested at one age alone', () => {
    const [pair] = pairsOf([index(76, '7 d'), index(88, '28 d'), agencyIndex(70, '7 d')])
    expect(pair && areOpposite(pair)).toBe(true)
    expect(pair?.sides.map(sidesWords).join()).toMatch(
      /takes another result too, which this sample was not tested for$/,
    )
  })
})
