import { readMoment } from '../../../src/core/measure/moment.ts'
import { readAge } from '../../../src/core/measure/age.ts'
import { describe, expect, it } from 'vitest'
import { withPrintedUnits } from '../../../src/edition/views/printed-units.ts'

describe('withPrintedUnits', () => {
  it('gives every quantity in a tree the sign of its unit, and changes nothing else', () => {
    const clause = {
      id: '1.95 g/cm3',
      limits: [{ byClass: { '*': [{ value: 1.95, unit: 'g/cm3', written: '1.95 g/cm3' }] } }],
      optional: false,
    }
    expect(withPrintedUnits(clause)).toEqual({
      id: '1.95 g/cm3',
      limits: [{ byClass: { '*': [{ value: 1.95, unit: 'g/cm³', written: '1.95 g/cm³' }] } }],
      optional: false,
    })
    expect(clause.limits[0]?.byClass['*'][0]?.unit).toBe('g/cm3')
  })
  it('keeps percentage points, which a sentence says in full', () => {
    const points = { unit: 'percentage points', written: '5 percentage points' }
    expect(withPrintedUnits(points)).toEqual(points)
  })
  it('leaves moments and ages what they are', () => {
    const clause = { age: readAge('28 d'), confirmed: { date: readMoment('2026-01-05') } }
    expect(`${withPrintedUnits(clause).age}`).toBe('28 d')
    expect(withPrintedUnits(clause)).toEqual(clause)
  })
})
