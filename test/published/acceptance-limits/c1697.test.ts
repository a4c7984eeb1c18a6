import { describe, expect, it } from 'vitest'
import { evidenceOf, history, result, clauseOf } from '../../core/judging/fixture.ts'
import { judge } from '../../../src/core/judging/verdict.ts'
import { limitsOf, outcomeOf } from './shipped-limits.ts'
import { shippedSet } from './shipped-sets.ts'

// ASTM C1697-16: scope (m.wnwk.com/doc/185627.html) and the rationale of a revision (ASTM WK64280), which
// says a standard deviation
// below 1 % for silica fume and below 1.9 % for the others: 2.5/2.576 = 0.97 and 5/2.576 = 1.94 for 99 %
// within.
const c1697 = shippedSet('c1697-2016')

describe('ASTM C1697-16 as shipped', () => {
  it('holds 2.5 points for silica fume and 5 points for the others', () => {
    expect(limitsOf(c1697)).toEqual({
      'share-silica-fume': 'magnitude-at-most 2.5 percentage points',
      'share-fly-ash': 'magnitude-at-most 5 percentage points',
      'share-natural-pozzolan': 'magnitude-at-most 5 percentage points',
      'share-slag': 'magnitude-at-most 5 percentage points',
    })
  })

  /** 20 shares about the declared one, ten on each side, with a standard deviation of s. */
  function share(id: 'share-silica-fume' | 'share-fly-ash', s: number, off = 0) {
    const [centre, ...earlier] = Array.from(
      { length: 20 },
      (_, place) => 20 + off + (place % 2 === 0 ? 1 : -1) * s * Math.sqrt(19 / 20),
    ) as [number, ...number[]]
    const evidence = evidenceOf([result(id, centre)], {
      kind: 'blend',
      facts: { 'contains-silica-fume': 'yes', 'contains-fly-ash': 'yes' },
      declared: { [id]: '20 %' },
      preceding: history(id, earlier),
    })
    return clauseOf(judge(c1697, evidence), id)
  }

  it('holds 99 % within 2.5 points for s 0.97 and not for s 0.98 about the declared share', () => {
    expect([0.97, 0.98].map((s) => share('share-silica-fume', s).outcome)).toEqual(['meets', 'does-not-meet'])
  })

  it('holds 99 % within 5 points for s 1.94 and not for s 1.95, nor for a mean that is off', () => {
    expect(
      [share('share-fly-ash', 1.94), share('share-fly-ash', 1.95), share('share-fly-ash', 1.9, 1)].map(
        ({ outcome }) => outcome,
      ),
    ).toEqual(['meets', 'does-not-meet', 'does-not-meet'])
  })

  it('leaves a constituent aside that the blend does not hold, and asks for a declared share and ten results', () => {
    const fume = (facts: Record<string, string>, declared: Record<string, string> = {}) =>
      outcomeOf(c1697, 'share-silica-fume', [result('share-silica-fume', 8)], {
        kind: 'blend',
        facts,
        declared,
      })
    expect([
      fume({ 'contains-silica-fume': 'no' }),
      fume({}),
      fume({ 'contains-silica-fume': 'yes' }, { 'share-silica-fume': '8 %' }),
    ]).toEqual(['not-applicable', 'not-reported', 'insufficient-history'])
  })

  it('asks for two or three constituents that conform', () => {
    const facts = (number: string) =>
      ['number-of-constituents', 'constituents'].map((id) =>
        outcomeOf(c1697, id, [], {
          kind: 'blend',
          facts: { 'number-of-constituents': number, 'constituents-conform': 'yes' },
        }),
      )
    expect([facts('two'), facts('four')]).toEqual([
      ['meets', 'meets'],
      ['does-not-meet', 'meets'],
    ])
  })
})
