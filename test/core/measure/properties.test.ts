import { describe, expect, it } from 'vitest'
import {
  isPropertyKey,
  property,
  PROPERTIES,
  type PropertyKey,
  storedUnit,
} from '../../../src/core/measure/properties.ts'
import { INDEX_OF, RATIO_OF } from '../../../src/core/measure/ratio-indices.ts'

const KEYS = Object.keys(PROPERTIES) as PropertyKey[]

describe('property', () => {
  it.each(KEYS)('%s has a title, a description and bounds in rising order', (key) => {
    const { title, description, bounds, decimals } = property(key)
    expect([title, description].every((text) => text !== '')).toBe(true)
    expect(bounds[0]).toBeLessThan(bounds[1])
    expect(Number.isInteger(decimals)).toBe(true)
  })
  it('is stored in the unit of its kind', () => {
    expect([storedUnit('SO3'), storedUnit('density'), storedUnit('bulk-resistivity')]).toEqual([
      '%',
      'g/cm3',
      'ohm m',
    ])
  })
})

describe('isPropertyKey', () => {
  it('knows the keys of the list and no name that every object has', () => {
    expect(KEYS.every(isPropertyKey)).toBe(true)
    expect(['loi', '', 'toString', '__proto__'].some(isPropertyKey)).toBe(false)
  })
})

describe('RATIO_OF and INDEX_OF', () => {
  it('lead from an index to what it is the ratio of, and back', () => {
    expect(RATIO_OF).toEqual({
      'strength-activity-index': 'compressive-strength',
      'resistivity-index': 'bulk-resistivity',
    })
    expect(INDEX_OF).toEqual({
      'compressive-strength': 'strength-activity-index',
      'bulk-resistivity': 'resistivity-index',
    })
  })
})
