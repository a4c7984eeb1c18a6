import { describe, expect, it } from 'vitest'
import type { Premise } from '../../../src/core/criteria/criterion.ts'
import { allHold, answersOf } from '../../../src/core/judging/premises.ts'
import type { WrittenClause } from '../../../src/records/criteria/written-criterion.ts'
import { evidenceOf, result, setOf } from './fixture.ts'

function premises(when: NonNullable<WrittenClause['when']>): readonly Premise[] {
  const set = setOf([{ clause: 'c', property: 'SO3', 'at-most': '5.0 %', when }], { classes: ['F', 'C'] })
  return set.clauses[0]?.when ?? []
}
const lime = premises([{ property: 'CaO', above: '1.5 %' }])
const stated = { property: 'CaO', limits: [{ operator: 'above', written: ['1.5 %'] }] }
const cao = (value: number, more = {}) => result('CaO', value, more)
const holds = (list: readonly Premise[], ...results: ReturnType<typeof cao>[]) =>
  allHold(list, evidenceOf(results), 'F')

describe('allHold, properties', () => {
  it('allHold compares at the digits of the limit, the very limit included', () => {
    expect([holds(lime, cao(1.56)), holds(lime, cao(1.54))]).toEqual([
      { holds: 'yes' },
      { holds: 'no', because: { code: 'property-otherwise', params: stated } },
    ])
  })

  it('allHold is open without a result, for the reason that stands in its place', () => {
    expect(holds(lime)).toEqual({
      holds: 'open',
      because: {
        code: 'property-not-determined',
        params: { property: 'CaO', reason: { code: 'no-result', params: {} } },
      },
    })
  })

  it('allHold is open for a censored result that may lie on either side, and decided by one that cannot', () => {
    expect(holds(lime, cao(2, { censored: 'below' }))).toEqual({
      holds: 'open',
      because: { code: 'property-on-both-sides', params: stated },
    })
    expect(holds(lime, cao(1, { censored: 'below' })).holds).toBe('no')
  })

  it('allHold holds as soon as one of several results says so', () => {
    expect([holds(lime, cao(1), cao(2)).holds, holds(lime, cao(1), cao(1.2)).holds]).toEqual(['yes', 'no'])
    expect(holds(lime, cao(1), cao(2, { censored: 'below' })).holds).toBe('open')
  })

  it('allHold asks a result to meet every limit', () => {
    const range = premises([{ property: 'CaO', above: '1.5 %', 'at-most': '5.0 %' }])
    expect([1, 2, 6].map((value) => holds(range, cao(value)).holds)).toEqual(['no', 'yes', 'no'])
  })

  it('allHold takes a limit that does not speak of the class for one that is not met', () => {
    const forC = premises([{ property: 'CaO', above: { C: '1.5 %' } }])
    expect([
      allHold(forC, evidenceOf([cao(9)]), 'F').holds,
      allHold(forC, evidenceOf([cao(9)]), 'C').holds,
    ]).toEqual(['no', 'yes'])
  })
})

describe('allHold, facts and several premises', () => {
  const marine = premises([{ fact: 'use', is: ['marine', 'road'] }])
  const fact = (facts?: Record<string, string>) =>
    allHold(marine, evidenceOf([], facts === undefined ? {} : { facts }), null)

  it('allHold asks for one of the words, and is open where none is stated', () => {
    expect([fact({ use: 'road' }), fact({ use: 'roof' })]).toEqual([
      { holds: 'yes' },
      { holds: 'no', because: { code: 'fact-otherwise', params: { fact: 'use', is: ['marine', 'road'] } } },
    ])
    const open = { holds: 'open', because: { code: 'fact-not-stated', params: { fact: 'use' } } }
    expect([fact({}), fact()]).toEqual([open, open])
  })

  it('allHold lets one that fails decide before one that is open, wherever it stands', () => {
    expect([holds([...lime, ...marine], cao(1)).holds, holds([...marine, ...lime], cao(1)).holds]).toEqual([
      'no',
      'no',
    ])
    expect(holds([...lime, ...marine], cao(2)).holds).toBe('open')
    expect(holds([]).holds).toBe('yes')
  })
})

describe('answersOf', () => {
  it('answersOf has no answer to a demand for a report', () => {
    expect(answersOf([{ operator: 'report', byClass: { '*': [] } }], { value: 1 }, null)).toEqual([])
  })
})
