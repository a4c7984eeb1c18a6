import { describe, expect, it } from 'vitest'
import { readAge } from '../../../src/core/measure/age.ts'
import type { Comparison } from '../../../src/core/criteria/criterion.ts'
import type { Evidence } from '../../../src/core/evidence/evidence.ts'
import { declaredQuantity, referenceOf } from '../../../src/core/judging/deviation-reference.ts'
import type { WrittenClause } from '../../../src/records/criteria/written-criterion.ts'
import { evidenceOf, history, quantityOf, setOf } from './fixture.ts'

function clauseFrom(from: NonNullable<WrittenClause['deviation-from']>): Comparison {
  const written: WrittenClause = {
    clause: 'c',
    property: 'strength-activity-index',
    condition: 'c311',
    age: readAge('28 d'),
    'deviation-from': from,
    'magnitude-at-most': '5 percentage points',
  }
  return setOf([written]).clauses[0] as Comparison
}
const none = (outcome: string, code: string) => ({ found: 'none', outcome, reason: { code, params: {} } })

describe('referenceOf', () => {
  it('referenceOf preceding results is their mean, with the lots that it rests on', () => {
    const preceding = history('strength-activity-index', [70, 80, 84])
    expect(referenceOf(clauseFrom({ preceding: 2 }), { sample: 'C' }, evidenceOf([], { preceding }))).toEqual(
      {
        found: 'value',
        value: 82,
        n: 2,
        lots: ['s/L2', 's/L3'],
        values: [80, 84],
        from: 'preceding',
      },
    )
    expect(referenceOf(clauseFrom({ preceding: 2 }), { sample: 'C' }, evidenceOf([]))).toEqual(
      none('insufficient-history', 'no-preceding-result'),
    )
  })

  it('referenceOf asks for the series of the clause by the method of the result', () => {
    const asked: unknown[] = []
    const preceding: Evidence['preceding'] = (...query) => {
      asked.push(query)
      return []
    }
    referenceOf(
      clauseFrom({ preceding: 7 }),
      { method: 'ASTM C311', sample: 'C' },
      evidenceOf([], { preceding }),
    )
    const regular = { ...clauseFrom({ preceding: 7 }), duty: 'regular' as const }
    referenceOf(regular, { sample: 'R3' }, evidenceOf([], { preceding }))
    const series = ['strength-activity-index', 'c311', readAge('28 d')]
    expect(asked).toEqual([
      [...series, 'ASTM C311', 7, undefined],
      [...series, undefined, 7, { duty: 'regular', sample: 'R3' }],
    ])
  })

  it('referenceOf a declared value is that value, whatever the control is', () => {
    const clause = clauseFrom({ declared: 'yes' })
    const declared = { 'strength-activity-index': '80 %' }
    expect(referenceOf(clause, { controlValue: 40, sample: 'C' }, evidenceOf([], { declared }))).toEqual({
      found: 'value',
      value: 80,
      n: 1,
      lots: [],
      values: [],
      from: 'declared',
    })
    expect(referenceOf(clause, { controlValue: 40, sample: 'C' }, evidenceOf([]))).toEqual(
      none('not-reported', 'no-declared-reference'),
    )
  })

  it('referenceOf the control is the value tested beside the result', () => {
    const clause = clauseFrom({ control: 'yes' })
    expect(referenceOf(clause, { controlValue: 0, sample: 'C' }, evidenceOf([]))).toEqual({
      found: 'value',
      value: 0,
      n: 1,
      lots: [],
      values: [],
      from: 'control',
    })
    expect(referenceOf(clause, { sample: 'C' }, evidenceOf([]))).toEqual(
      none('not-reported', 'no-control-reference'),
    )
  })

  it('referenceOf needs a clause on a deviation', () => {
    const plain = setOf([{ clause: 'loi', property: 'loss-on-ignition', 'at-most': '6.0 %' }])
    expect(() => referenceOf(plain.clauses[0] as Comparison, { sample: 'C' }, evidenceOf([]))).toThrow(
      new RangeError('referenceOf needs a clause on a deviation, got loi'),
    )
  })
})

describe('declaredQuantity', () => {
  const declares = (declared?: Evidence['declared']) =>
    declaredQuantity('density', evidenceOf([], declared === undefined ? {} : { declared }))

  it('declaredQuantity takes a quantity as it is, and reads one that is written', () => {
    const quantity = quantityOf('2400 kg/m3', 'density')
    expect(declares({ density: quantity })).toBe(quantity)
    expect(declares({ density: '2400 kg/m3' })).toMatchObject({ value: 2.4, written: '2400 kg/m3' })
  })

  it('declaredQuantity has none where the source declares none, or none that can be read', () => {
    expect([
      declares(),
      declares({}),
      declares({ density: undefined }),
      declares({ density: 'about 2.4' }),
      declares({ density: '2.4 %' }),
      declares(Object.create({ density: '2.4 g/cm3' })),
    ]).toEqual(Array.from({ length: 6 }, () => undefined))
  })
})
