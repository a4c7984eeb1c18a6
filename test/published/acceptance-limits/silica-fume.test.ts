import { readAge } from '../../../src/core/measure/age.ts'
import { describe, expect, it } from 'vitest'
import { bestClass, judge } from '../../../src/core/judging/verdict.ts'
import { clauseOf, evidenceOf, history, result } from '../../core/judging/fixture.ts'
import { limitsOf, outcomeOf, readClauses } from './shipped-limits.ts'
import { shippedSet } from './shipped-sets.ts'

// ASTM C1240 of 2004: extract of a user manual (topken.com/en/technical/10.html). EN 13263-1:2009: training
// page on silica fume
// (kwaliteitsdienstbeton.nl) and foreword (m.mydoc123.com/p-665885.html). What is not listed as read is from
// memory.
const c1240 = shippedSet('c1240-2004')
const en13263 = shippedSet('en13263-1-2009')
const FUME = { kind: 'silica-fume' } as const

describe('ASTM C1240-04 as shipped', () => {
  it('holds the limits of the reference file', () => {
    expect(limitsOf(c1240)).toEqual({
      'silicon-dioxide': 'at-least 85 %',
      moisture: 'at-most 3 %',
      'loss-on-ignition': 'at-most 6 %',
      residue: 'at-most 10 %',
      'residue-uniformity': 'magnitude-at-most 5 percentage points',
      activity: 'at-least 105 %',
      'specific-surface': 'at-least 15 m2/g',
    })
    expect(readClauses(c1240)).toEqual(['silicon-dioxide', 'moisture', 'loss-on-ignition', 'residue'])
  })

  it('judges each limit met on it and not met 0.1 beyond, since no rounding to whole numbers was read', () => {
    const cases: [string, Parameters<typeof result>[0], number, number][] = [
      ['silicon-dioxide', 'SiO2', 85, 84.9],
      ['moisture', 'moisture', 3, 3.1],
      ['loss-on-ignition', 'loss-on-ignition', 6, 6.1],
      ['residue', 'residue-45um', 10, 10.1],
      ['specific-surface', 'specific-surface', 15000, 14900],
    ]
    for (const [id, key, on, beyond] of cases)
      expect([
        id,
        outcomeOf(c1240, id, [result(key, on)], FUME),
        outcomeOf(c1240, id, [result(key, beyond)], FUME),
      ]).toEqual([id, 'meets', 'does-not-meet'])
  })

  it('allows oversize 2.0 to 12.0 after 6.0 and 8.0: points about the average', () => {
    const outcomes = [2, 1.9, 12, 12.1].map((value) =>
      outcomeOf(c1240, 'residue-uniformity', [result('residue-45um', value)], {
        ...FUME,
        preceding: history('residue-45um', [6, 8]),
      }),
    )
    expect(outcomes).toEqual(['meets', 'does-not-meet', 'meets', 'does-not-meet'])
  })
})

describe('EN 13263-1:2009 as shipped', () => {
  it('holds the limits of the reference file', () => {
    expect(limitsOf(en13263)).toEqual({
      'silicon-dioxide': 'at-least 1 85 %, 2 80 %',
      silicon: 'at-most 0.4 %',
      'free-calcium-oxide': 'at-most 1.0 %',
      'sulfur-trioxide': 'at-most 2.0 %',
      'loss-on-ignition': 'at-most 4.0 %',
      chloride: 'at-most 0.10 %',
      alkalis: 'report',
      'specific-surface': 'between 15 m2/g to 35 m2/g',
      activity: 'at-least 100 %',
    })
    expect(readClauses(en13263)).toEqual([
      'silicon-dioxide',
      'free-calcium-oxide',
      'sulfur-trioxide',
      'loss-on-ignition',
      'chloride',
      'alkalis',
    ])
  })

  it('lets chloride up to 0.30 % by, where the source declares its value', () => {
    const chloride = (value: number, declared?: string) =>
      outcomeOf(en13263, 'chloride', [result('chloride', value)], {
        ...FUME,
        class: '1',
        declared: { chloride: declared },
      })
    expect([chloride(0.1), chloride(0.2), chloride(0.2, '0.25 %'), chloride(0.3, '0.30 %')]).toEqual([
      'meets',
      'does-not-meet',
      'meets-by-approval',
      'meets-by-approval',
    ])
    expect([chloride(0.26, '0.25 %'), chloride(0.31, '0.30 %'), chloride(0.31, '0.40 %')]).toEqual([
      'does-not-meet',
      'does-not-meet',
      'does-not-meet',
    ])
  })

  it('takes a surface of 15 and of 35 m2/g and none beyond', () => {
    expect(
      [14.9, 15, 35, 35.1].map((value) =>
        outcomeOf(en13263, 'specific-surface', [result('specific-surface', 1000 * value)], FUME),
      ),
    ).toEqual(['does-not-meet', 'meets', 'meets', 'does-not-meet'])
  })

  it('finds class 1 from silicon dioxide of 85 %, class 2 from 80 %', () => {
    const others = [
      result('silicon', 0.4),
      result('free-CaO', 1),
      result('SO3', 2),
      result('loss-on-ignition', 4),
      result('chloride', 0.1),
      result('specific-surface', 20000),
      result('strength-activity-index', 100, { condition: 'en13263-10', age: readAge('28 d') }),
    ]
    expect(
      [85, 84.9, 80, 79.9].map(
        (value) => bestClass(en13263, evidenceOf([...others, result('SiO2', value)], FUME))?.best,
      ),
    ).toEqual(['1', '2', '2', null])
  })

  it('leaves alkalis aside until the purchaser asks for them', () => {
    const asked = (requested?: Record<string, string[]>) =>
      clauseOf(
        judge(
          en13263,
          evidenceOf([], { ...FUME, class: '1', ...(requested === undefined ? {} : { requested }) }),
        ),
        'alkalis',
      ).outcome
    expect([asked(), asked({ 'en13263-1-2009': ['alkalis'] })]).toEqual(['not-invoked', 'not-reported'])
  })
})
