import { describe, expect, it } from 'vitest'
import { isQuantity, kindOfSample } from '../../../src/core/mortar/mortar.ts'
import { q } from '../readings/fixture.ts'

describe('kindOfSample', () => {
  const samples = [
    { id: 'G', kind: 'grab' },
    { id: 'C', kind: 'composite' },
    { id: 'S', kind: 'split' },
  ] as const

  it('is what the record says of the sample of that id', () => {
    expect([kindOfSample('C', { samples }), kindOfSample('S', { samples })]).toEqual(['composite', 'split'])
  })
  it('is a grab where the record has no such sample', () => {
    expect(kindOfSample('X', { samples })).toBe('grab')
    expect(kindOfSample('C', { samples: [] })).toBe('grab')
  })
})

describe('isQuantity', () => {
  it('tells a quantity alone from a specimen with its sizes', () => {
    expect(isQuantity(q('78.4 kN', 'force'))).toBe(true)
    expect(isQuantity({ load: q('78.4 kN', 'force') })).toBe(false)
  })
})
