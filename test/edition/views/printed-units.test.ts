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
})
