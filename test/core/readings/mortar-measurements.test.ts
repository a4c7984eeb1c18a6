import { describe, expect, it } from 'vitest'
import { property } from '../../../src/core/measure/properties.ts'
import { INDEX_OF, RATIO_OF } from '../../../src/core/measure/ratio-indices.ts'
import { MORTAR_MEASUREMENTS } from '../../../src/core/readings/mortar-measurements.ts'

describe('MORTAR_MEASUREMENTS', () => {
  it('are the ratios that criteria know: each index over its own property, and no other', () => {
    expect(Object.fromEntries(MORTAR_MEASUREMENTS.map((each) => [each.index, each.property]))).toEqual(
      RATIO_OF,
    )
    expect(Object.fromEntries(MORTAR_MEASUREMENTS.map((each) => [each.property, each.index]))).toEqual(
      INDEX_OF,
    )
  })
  it('measure a property and state an index', () => {
    expect(
      MORTAR_MEASUREMENTS.map((each) => [property(each.property).nature, property(each.index).nature]),
    ).toEqual([
      ['measured', 'index'],
      ['measured', 'index'],
    ])
  })
})
