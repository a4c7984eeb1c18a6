import { readMoment } from '../../../src/core/measure/moment.ts'
import { readAge } from '../../../src/core/measure/age.ts'
import { describe, expect, it } from 'vitest'
import { bestClass, judge } from '../../../src/core/judging/verdict.ts'
import type { PrecedingResult, Result } from '../../../src/core/result/result.ts'
import { clauseOf, evidenceOf, result } from '../../core/judging/fixture.ts'
import { limitsOf, outcomeOf } from './shipped-limits.ts'
import { shippedSet } from './shipped-sets.ts'

// EN 450-1:2012 as told by producers' pages and a trade article (scotash.com, pgeekoserwis.pl, cezep.cz,
// technologieibudownictwo.pl);
// statistics, limits for single results and what is deemed to satisfy from memory. Worked cases are own
// arithmetic.
const en450 = shippedSet('en450-1-2012')

const activityIndex = (age: string, value: number, condition = 'en450-25'): Result =>
  result('strength-activity-index', value, { condition, age: readAge(age) })
const preceding = (values: readonly number[]): PrecedingResult[] =>
  values.map((value, place) => ({ lot: `s/L${place}`, sampled: readMoment('2026-01-01'), value }))

describe('EN 450-1:2012 as shipped', () => {
  it('holds the limits of the reference file, by category of each axis', () => {
    expect(limitsOf(en450)).toEqual({
      'loss-on-ignition': 'at-most A 5.0 %, B 7.0 %, C 9.0 %',
      residue: 'at-most S 12 %, N 40 %',
      'residue-declared': 'magnitude-at-most 10 percentage points',
      'water-requirement': 'at-most 95 %',
      chloride: 'at-most 0.10 %',
      'sulfur-trioxide': 'at-most 3.0 %',
      'free-calcium-oxide': 'at-most 2.5 %',
      soundness: 'at-most 10 mm',
      'reactive-calcium-oxide': 'at-most 10.0 %',
      'reactive-silicon-dioxide': 'at-least 25 %',
      'oxide-sum': 'at-least 70 %',
      'magnesium-oxide': 'at-most 4.0 %',
      alkalis: 'at-most 5.0 %',
      phosphate: 'at-most 5 %',
      'soluble-phosphate': 'at-most 100 mg/kg',
      'activity-28d': 'at-least 75 %',
      'activity-90d': 'at-least 85 %',
      'initial-setting': 'at-most 200 %',
      'density-declared': 'magnitude-at-most 200 kg/m3',
      'co-fired-ash': 'at-most 30 %',
      'activity-28d-conformity': 'at-least 75 %',
      'activity-90d-conformity': 'at-least 85 %',
      'loss-on-ignition-conformity': 'at-most A 5.0 %, B 7.0 %, C 9.0 %',
      'sulfur-trioxide-conformity': 'at-most 3.0 %',
      'loss-on-ignition-single': 'at-most A 7.0 %, B 9.0 %, C 11.0 %',
      'residue-single': 'at-most S 13 %, N 45 %',
      'sulfur-trioxide-single': 'at-most 3.5 %',
      'activity-28d-single': 'at-least 70 %',
      'activity-90d-single': 'at-least 80 %',
    })
  })

  it('multiplies loss on ignition A, B, C by fineness S, N', () => {
    expect(en450.classes).toEqual(['A/S', 'A/N', 'B/S', 'B/N', 'C/S', 'C/N'])
    const met = (loss: number, residue: number) =>
      en450.classes.filter((name) =>
        ['loss-on-ignition', 'residue'].every(
          (id) =>
            outcomeOf(en450, id, [result('loss-on-ignition', loss), result('residue-45um', residue)], {
              class: name,
            }) === 'meets',
        ),
      )
    expect(met(5, 12)).toEqual(en450.classes)
    expect(met(5.1, 12.1)).toEqual(['B/N', 'C/N'])
    expect(met(9, 40)).toEqual(['C/N'])
    expect(met(9.1, 40)).toEqual([])
  })

  it('asks a water requirement of category S alone, a declared fineness of category N alone', () => {
    const water = (method: string) =>
      outcomeOf(en450, 'water-requirement', [result('water-requirement', 95, { method })], { class: 'A/S' })
    expect([water('EN 450-1'), water('ASTM C311')]).toEqual(['meets', 'not-reported'])
    expect(outcomeOf(en450, 'water-requirement', [], { class: 'A/N' })).toBe('not-applicable')
    const declared = (lotClass: string, value: number) =>
      outcomeOf(en450, 'residue-declared', [result('residue-45um', value)], {
        class: lotClass,
        declared: { 'residue-45um': '25 %' },
      })
    expect([declared('B/N', 35), declared('B/N', 15), declared('B/N', 35.1), declared('B/S', 99)]).toEqual([
      'meets',
      'meets',
      'does-not-meet',
      'not-applicable',
    ])
  })

  it('asks for soundness where free calcium oxide is above 1.5 %, and stops at 2.5 %', () => {
    const soundness = (free: number, ...more: Result[]) =>
      outcomeOf(en450, 'soundness', [result('free-CaO', free), ...more], { class: 'A/N' })
    expect([
      soundness(1.5),
      soundness(1.6),
      soundness(1.6, result('soundness-expansion', 10)),
      soundness(1.6, result('soundness-expansion', 10.1)),
    ]).toEqual(['not-applicable', 'not-reported', 'meets', 'does-not-meet'])
    expect(
      [2.5, 2.6].map((value) => outcomeOf(en450, 'free-calcium-oxide', [result('free-CaO', value)])),
    ).toEqual(['meets', 'does-not-meet'])
  })

  it('deems chemical clauses met where coal alone is burned, and judges a result all the same', () => {
    const coalOnly = { facts: { 'coal-only': 'yes' } }
    const deemed = ['oxide-sum', 'magnesium-oxide', 'alkalis', 'phosphate', 'soluble-phosphate']
    expect(deemed.map((id) => outcomeOf(en450, id, [], coalOnly))).toEqual(deemed.map(() => 'meets'))
    expect(deemed.map((id) => outcomeOf(en450, id, []))).toEqual(deemed.map(() => 'not-reported'))
    expect(outcomeOf(en450, 'magnesium-oxide', [result('MgO', 4.1)], coalOnly)).toBe('does-not-meet')
    expect(outcomeOf(en450, 'reactive-silicon-dioxide', [], coalOnly)).toBe('not-reported')
  })

  it('asks for the co-fired share, at most 30 %, where not coal alone is burned', () => {
    const share = (coalOnly: string, value: number) =>
      outcomeOf(en450, 'co-fired-ash', [result('co-fired-ash', value)], { facts: { 'coal-only': coalOnly } })
    expect([share('no', 30), share('no', 30.1), share('yes', 0)]).toEqual([
      'meets',
      'does-not-meet',
      'not-applicable',
    ])
  })

  it('asks for 75 % at 28 d and 85 % at 90 d together, in its own mortar', () => {
    const activity = (early: number, late: number, condition?: string) =>
      outcomeOf(en450, 'activity', [
        activityIndex('28 d', early, condition),
        activityIndex('90 d', late, condition),
      ])
    expect([activity(75, 85), activity(74.9, 95), activity(95, 84.9)]).toEqual([
      'meets',
      'does-not-meet',
      'does-not-meet',
    ])
    expect(activity(99, 99, 'c311')).toBe('not-reported')
    expect(outcomeOf(en450, 'activity', [activityIndex('28 d', 90)])).toBe('not-reported')
  })

  it('takes density within 200 kg/m3 of the declared 2300', () => {
    const density = (value: number) =>
      outcomeOf(en450, 'density-declared', [result('density', value)], {
        declared: { density: '2300 kg/m3' },
      })
    expect([2.1, 2.5, 2.09, 2.51].map(density)).toEqual(['meets', 'meets', 'does-not-meet', 'does-not-meet'])
  })

  it('takes 100 mg/kg of soluble phosphate and no 101', () => {
    expect(
      [0.01, 0.0101].map((value) =>
        outcomeOf(en450, 'soluble-phosphate', [result('soluble-phosphate', value)]),
      ),
    ).toEqual(['meets', 'does-not-meet'])
  })
})

describe('EN 450-1:2012, conformity over the control period', () => {
  /** 20 results with mean 80.0: ten on each side, at such a distance that the standard deviation is s. */
  const twenty = (s: number) =>
    Array.from({ length: 20 }, (_, place) => 80 + (place % 2 === 0 ? 1 : -1) * s * Math.sqrt(19 / 20))

  function byVariables(values: readonly number[]) {
    const evidence = evidenceOf([activityIndex('28 d', values.at(-1) ?? 0)], {
      class: 'A/N',
      period: () => preceding(values.slice(0, -1)),
    })
    return clauseOf(judge(en450, evidence), 'activity-28d-conformity')
  }

  it('conforms with mean 80.0 and s 2.0 of 20: 80.0 - 1.926 x 2.0 = 76.1', () => {
    const clause = byVariables(twenty(2))
    expect(clause.outcome).toBe('meets')
    expect(clause.compared).toBeCloseTo(76.1, 1)
  })

  it('does not conform with s 3.0, 74.2, though no result is below 75', () => {
    expect(Math.min(...twenty(3))).toBeGreaterThan(75)
    const clause = byVariables(twenty(3))
    expect(clause.outcome).toBe('does-not-meet')
    expect(clause.compared).toBeCloseTo(74.2, 1)
  })

  it('needs 20 results', () => {
    expect(byVariables(twenty(2).slice(1)).outcome).toBe('insufficient-history')
  })

  it('lets no SO3 of 20 to 39 results, one of 40 and six of 110 lie beyond 3.0 %', () => {
    const outcome = (n: number, beyond: number) => {
      const earlier = Array.from({ length: n - 1 }, (_, place) => (place < beyond ? 3.2 : 2))
      return outcomeOf(en450, 'sulfur-trioxide-conformity', [result('SO3', 2)], {
        period: () => preceding(earlier),
      })
    }
    expect([outcome(19, 0), outcome(20, 0), outcome(39, 1), outcome(40, 1), outcome(40, 2)]).toEqual([
      'insufficient-history',
      'meets',
      'does-not-meet',
      'meets',
      'does-not-meet',
    ])
    expect([outcome(109, 5), outcome(110, 6), outcome(110, 7)]).toEqual(['meets', 'meets', 'does-not-meet'])
  })
})

describe('EN 450-1:2012, best class met', () => {
  const results = (loss: number, residue: number): Result[] => [
    result('loss-on-ignition', loss),
    result('residue-45um', residue),
    result('water-requirement', 95, { method: 'EN 450-1' }),
    result('chloride', 0.01),
    result('SO3', 1),
    result('free-CaO', 1),
    result('reactive-CaO', 3),
    result('reactive-SiO2', 35),
    activityIndex('28 d', 80),
    activityIndex('90 d', 95),
    result('setting-ratio', 120),
    result('density', 2.3),
  ]
  const more = { facts: { 'coal-only': 'yes' }, declared: { 'residue-45um': '20 %', density: '2300 kg/m3' } }

  it('puts the stricter categories first, a source without history included', () => {
    expect(
      [
        [4, 11],
        [4, 20],
        [6, 11],
        [8, 30],
      ].map(([loss = 0, residue = 0]) => bestClass(en450, evidenceOf(results(loss, residue), more))?.best),
    ).toEqual(['A/S', 'A/N', 'B/S', 'C/N'])
    expect(judge(en450, evidenceOf(results(4, 20), { ...more, class: 'A/N' })).outcome).toBe(
      'insufficient-history',
    )
  })
})
