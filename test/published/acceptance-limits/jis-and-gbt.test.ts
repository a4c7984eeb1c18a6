import { readAge } from '../../../src/core/measure/age.ts'
import { describe, expect, it } from 'vitest'
import { bestClass } from '../../../src/core/judging/verdict.ts'
import { evidenceOf, result } from '../../core/judging/fixture.ts'
import { limitsOf, outcomeOf, readClauses } from './shipped-limits.ts'
import { shippedSet } from './shipped-sets.ts'

// JIS A 6201: table on a study page (ga40077.com/concrete-engineer/fiy-ash-quality). GB/T 1596-2017: foreword
// in English
// (bzfyw.com), an answer page on grade I (chaxiaohao.com) and a test sheet (xiaomilidoc.com); the rest from
// memory.
const jis = shippedSet('jis-a6201')
const gbt = shippedSet('gbt1596-2017')

describe('JIS A 6201 as shipped', () => {
  it('holds the table of the reference file, types I to IV', () => {
    expect(limitsOf(jis)).toEqual({
      'silicon-dioxide': 'at-least 45.0 %',
      moisture: 'at-most 1.0 %',
      'loss-on-ignition': 'at-most I 3.0 %, II 5.0 %, III 8.0 %, IV 5.0 %',
      density: 'at-least 1.95 g/cm3',
      residue: 'at-most I 10 %, II 40 %, III 40 %, IV 70 %',
      'specific-surface': 'at-least I 5000 cm2/g, II 2500 cm2/g, III 2500 cm2/g, IV 1500 cm2/g',
      'flow-ratio': 'at-least I 105 %, II 95 %, III 85 %, IV 75 %',
      'activity-28d': 'at-least I 90 %, II 80 %, III 80 %, IV 60 %',
      'activity-91d': 'at-least I 100 %, II 90 %, III 90 %, IV 70 %',
    })
    expect(readClauses(jis)).toEqual(Object.keys(limitsOf(jis)))
  })

  it('asks for the index at 28 d and at 91 d together', () => {
    const activity = (type: string, early: number, late: number) =>
      outcomeOf(
        jis,
        'activity',
        [['28 d', early] as const, ['91 d', late] as const].map(([age, value]) =>
          result('strength-activity-index', value, { condition: 'jis-a6201-25', age: readAge(age) }),
        ),
        { class: type },
      )
    expect([
      activity('II', 80, 90),
      activity('II', 79.9, 100),
      activity('II', 99, 89.9),
      activity('I', 80, 90),
      activity('IV', 60, 70),
    ]).toEqual(['meets', 'does-not-meet', 'does-not-meet', 'does-not-meet', 'meets'])
  })

  it('takes residue or specific surface, with 2500 cm2/g read as 250 m2/kg', () => {
    const fineness = (residue: number, surface: number) =>
      outcomeOf(jis, 'fineness', [result('residue-45um', residue), result('specific-surface', surface)], {
        class: 'II',
      })
    expect([fineness(40.1, 250), fineness(40, 249), fineness(40.1, 249)]).toEqual([
      'meets',
      'meets',
      'does-not-meet',
    ])
  })
})

describe('GB/T 1596-2017 as shipped', () => {
  it('holds the limits of the reference file, grades I to III', () => {
    expect(limitsOf(gbt)).toEqual({
      residue: 'at-most I 12 %, II 30 %, III 45 %',
      'water-ratio': 'at-most I 95 %, II 105 %, III 115 %',
      'loss-on-ignition': 'at-most I 5 %, II 8 %, III 10.0 %',
      moisture: 'at-most 1.0 %',
      'sulfur-trioxide': 'at-most 3 %',
      'free-calcium-oxide-F': 'at-most 1.0 %',
      'free-calcium-oxide-C': 'at-most 4.0 %',
      'oxide-sum-F': 'at-least 70 %',
      'oxide-sum-C': 'at-least 50 %',
      density: 'at-most 2.6 g/cm3',
      activity: 'at-least 70 %',
    })
    expect(readClauses(gbt)).toEqual(['residue', 'sulfur-trioxide', 'activity'])
  })

  it('asks by the class of the coal: 1.0 % free calcium oxide for F, 4.0 % for C', () => {
    const free = (coal: string, value: number) =>
      ['free-calcium-oxide-F', 'free-calcium-oxide-C'].map((id) =>
        outcomeOf(gbt, id, [result('free-CaO', value)], { class: 'II', facts: { 'coal-class': coal } }),
      )
    expect(free('F', 1.1)).toEqual(['does-not-meet', 'not-applicable'])
    expect(free('C', 4)).toEqual(['not-applicable', 'meets'])
  })

  it('computes the index to 1 %, as the test sheet does', () => {
    expect(
      [69.5, 69.4].map((value) =>
        outcomeOf(gbt, 'activity', [
          result('strength-activity-index', value, { condition: 'gbt1596-30', age: readAge('28 d') }),
        ]),
      ),
    ).toEqual(['meets', 'does-not-meet'])
  })

  it('finds the best grade by residue, water ratio and loss on ignition', () => {
    const evidence = (residue: number, water: number, loss: number) =>
      evidenceOf(
        [
          result('residue-45um', residue),
          result('water-requirement', water, { method: 'GB/T 1596' }),
          result('loss-on-ignition', loss),
          result('moisture', 0.5),
          result('SO3', 1),
          result('free-CaO', 0.5),
          result('oxide-sum', 85),
          result('density', 2.3),
          result('strength-activity-index', 75, { condition: 'gbt1596-30', age: readAge('28 d') }),
        ],
        { facts: { 'coal-class': 'F' } },
      )
    expect(
      [evidence(12, 95, 5), evidence(12.1, 95, 5), evidence(30, 105, 8.1), evidence(45, 115, 10.1)].map(
        (known) => bestClass(gbt, known)?.best,
      ),
    ).toEqual(['I', 'II', 'III', null])
  })
})
