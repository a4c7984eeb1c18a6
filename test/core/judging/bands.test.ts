import { describe, expect, it } from 'vitest'
import { judge } from '../../../src/core/judging/verdict.ts'
import type { WrittenClause } from '../../../src/records/criteria/written-criterion.ts'
import { clauseOf, evidenceOf, result, setOf } from './fixture.ts'

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
