import { describe, expect, it } from 'vitest'
import { combineGroup, combineSet, isNeutral, severity } from '../../../src/core/criteria/combining.ts'
import { OUTCOMES, type Outcome } from '../../../src/core/criteria/outcome.ts'

const ALL: readonly Outcome[] = [
  'does-not-meet',
  'not-valid',
  'not-reported',
  'inconclusive',
  'pending',
  'insufficient-history',
  'meets-by-approval',
  'meets',
]
const ANY: readonly Outcome[] = [
  'meets',
  'meets-by-approval',
  'pending',
  'inconclusive',
  'insufficient-history',
  'not-valid',
  'does-not-meet',
  'not-reported',
]
const NEUTRAL: readonly Outcome[] = ['not-applicable', 'not-invoked', 'reported']

describe('combineGroup and combineSet', () => {
  it('combineSet takes the worse of every pair, in either order', () => {
    ALL.forEach((worse, place) => {
      for (const better of ALL.slice(place)) {
        expect(combineSet([worse, better])).toBe(worse)
        expect(combineGroup('all-of', [better, worse])).toBe(worse)
      }
    })
  })

  it('combineGroup of alternatives takes the first present of every pair, in either order', () => {
    ANY.forEach((winner, place) => {
      for (const other of ANY.slice(place)) {
        expect(combineGroup('any-of', [winner, other])).toBe(winner)
        expect(combineGroup('any-of', [other, winner])).toBe(winner)
      }
    })
  })

  it('combineGroup does not hide a failed route behind one that was never run', () => {
    expect(combineGroup('any-of', ['not-reported', 'does-not-meet'])).toBe('does-not-meet')
  })

  it('combineGroup and combineSet leave neutral members out', () => {
    for (const neutral of NEUTRAL) {
      for (const outcome of ALL) {
        expect(combineSet([neutral, outcome])).toBe(outcome)
        expect(combineGroup('any-of', [outcome, neutral])).toBe(outcome)
      }
    }
  })

  it('combineGroup of nothing but neutral members is not applicable, combineSet reported', () => {
    expect(combineGroup('any-of', NEUTRAL)).toBe('not-applicable')
    expect(combineGroup('all-of', [])).toBe('not-applicable')
    expect(combineSet(NEUTRAL)).toBe('reported')
    expect(combineSet([])).toBe('reported')
  })

  it('every outcome of the closed set is either ordered or neutral', () => {
    expect([...ALL, ...NEUTRAL].sort()).toEqual([...OUTCOMES].sort())
    expect([...ANY].sort()).toEqual([...ALL].sort())
    for (const outcome of OUTCOMES) expect(isNeutral(outcome)).toBe(NEUTRAL.includes(outcome))
  })

  it('severity ranks the worst outcome lowest and neutral ones last', () => {
    expect(severity('does-not-meet')).toBe(0)
    expect(severity('meets')).toBeLessThan(severity('reported'))
  })
})
