import { describe, expect, it } from 'vitest'
import { judge } from '../../../src/core/judging/verdict.ts'
import type { WrittenClause } from '../../../src/records/criteria/written-criterion.ts'
import { readAge } from '../../../src/core/measure/age.ts'
import { clauseSentence } from '../../../src/words/clause-sentences.ts'
import { clauseOf, evidenceOf, index, result, setOf } from './fixture.ts'

const clause: WrittenClause = {
  clause: 'c',
  property: 'CaO',
  band: [
    { title: 'low', 'at-most': '10.0 %' },
    { title: 'high and sulfated', above: '10.0 %', and: [{ property: 'SO3', above: '3.0 %' }] },
    { title: 'high', 'at-most': '20.0 %' },
  ],
}
const judged = (...results: ReturnType<typeof result>[]) =>
  clauseOf(judge(setOf([clause]), evidenceOf(results)), 'c')
const cao = (value: number, more = {}) => result('CaO', value, more)

describe('a classification', () => {
  it('judge names the first band that holds the value, its very limit included', () => {
    const so3 = result('SO3', 2)
    expect([10, 10.1, 20, 20.1].map((value) => judged(cao(value), so3).band)).toEqual([
      'low',
      'high',
      'high',
      undefined,
    ])
    expect(judged(cao(20.1), so3)).toMatchObject({
      outcome: 'reported',
      value: 20.1,
      reasons: [{ code: 'band-none', params: {} }],
    })
    expect(judged(cao(10)).reasons).toEqual([{ code: 'band-found', params: { band: 'low' } }])
  })

  it('judge asks other properties of a region, and is open where one is not reported', () => {
    expect(judged(cao(12), result('SO3', 3.1)).band).toBe('high and sulfated')
    expect(judged(cao(12))).toMatchObject({
      outcome: 'not-reported',
      reasons: [
        {
          code: 'band-not-determined',
          params: { because: { code: 'property-not-determined', params: { property: 'SO3' } } },
        },
      ],
    })
    expect(judged(cao(9)).band).toBe('low')
  })

  it('judge is open for a censored result on both sides of a band’s limit', () => {
    expect(judged(cao(12, { censored: 'below' })).reasons).toEqual([
      { code: 'band-not-determined', params: { because: { code: 'band-on-both-sides', params: {} } } },
    ])
    expect(judged(cao(10, { censored: 'below' })).band).toBe('low')
  })
})

describe('a band that asks for the same index at another age', () => {
  const early: WrittenClause = {
    clause: 'c',
    property: 'strength-activity-index',
    condition: 'c311',
    age: readAge('28 d'),
    band: [
      {
        title: 'fast',
        'at-least': '90 %',
        and: [
          { property: 'strength-activity-index', condition: 'c311', age: readAge('7 d'), 'at-least': '85 %' },
        ],
      },
      { title: 'slow', 'at-least': '90 %' },
    ],
  }

  it('judge looks for the result of that age, not for the one classified', () => {
    const band = (sevenDays: number) =>
      clauseOf(judge(setOf([early]), evidenceOf([index('7 d', sevenDays), index('28 d', 95)])), 'c').band
    expect([band(86), band(80)]).toEqual(['fast', 'slow'])
  })

  it('the sentence of the clause names that age', () => {
    const set = setOf([early])
    const [clause] = set.clauses
    expect(clause && clauseSentence(clause, set, (id) => id)).toContain(
      'fast where it is at least 90 % and strength activity index at 7 d is at least 85 %; slow where it is at least 90 %',
    )
  })
})
