import { describe, expect, it } from 'vitest'
import type { Limit } from '../../../src/core/criteria/criterion.ts'
import {
  limitsForClass,
  quantitiesFor,
  statedLimit,
  statedLimits,
} from '../../../src/core/criteria/limits-for-class.ts'
import type { Quantity } from '../../../src/core/measure/units.ts'

const percent = (value: number, written: string): Quantity => ({
  kind: 'fraction',
  value,
  unit: '%',
  written,
  decimals: 1,
})
const [six, ten] = [percent(6, '6.0 %'), percent(10, '10.0 %')]
const byClass: Limit = { operator: 'at-most', byClass: { F: [six], N: [ten] } }
const everyClass: Limit = { operator: 'at-least', byClass: { '*': [ten] } }
const report: Limit = { operator: 'report', byClass: { '*': [] } }

describe('quantitiesFor', () => {
  it('quantitiesFor takes the class’s own, or the one that holds for every class', () => {
    expect([quantitiesFor(byClass, 'F'), quantitiesFor(byClass, 'N')]).toEqual([[six], [ten]])
    expect([quantitiesFor(everyClass, 'F'), quantitiesFor(everyClass, null)]).toEqual([[ten], [ten]])
  })

  it('quantitiesFor is undefined where the limit does not speak of the class, or none is known', () => {
    expect([quantitiesFor(byClass, 'C'), quantitiesFor(byClass, null)]).toEqual([undefined, undefined])
  })

  it('quantitiesFor finds the category that a class is made of', () => {
    expect(quantitiesFor(byClass, 'N/A')).toEqual([ten])
  })

  it('quantitiesFor takes a name that every object has for no class', () => {
    expect(quantitiesFor(byClass, 'toString')).toBeUndefined()
  })
})

describe('limitsForClass', () => {
  it('limitsForClass leaves out reports and limits of other classes', () => {
    expect(limitsForClass([byClass, everyClass, report], 'N')).toEqual([
      { operator: 'at-most', quantities: [ten] },
      { operator: 'at-least', quantities: [ten] },
    ])
    expect(limitsForClass([byClass, report], 'C')).toEqual([])
  })
})

describe('statedLimits', () => {
  it('statedLimits gives the digits as written, the first class’s where the class has none', () => {
    expect(statedLimits([byClass, report], 'N')).toEqual([
      { operator: 'at-most', written: ['10.0 %'] },
      { operator: 'report', written: [] },
    ])
    expect(statedLimits([byClass], 'C')).toEqual([{ operator: 'at-most', written: ['6.0 %'] }])
    expect(statedLimits([{ operator: 'at-most', byClass: {} }], 'C')).toEqual([
      { operator: 'at-most', written: [] },
    ])
  })

  it('statedLimit writes both ends of a range', () => {
    expect(statedLimit({ operator: 'between', quantities: [six, ten] })).toEqual({
      operator: 'between',
      written: ['6.0 %', '10.0 %'],
    })
  })
})
