import { describe, expect, it } from 'vitest'
import { isQuantity, sampleOf } from '../../../src/core/mortar/mortar.ts'
import { q } from '../readings/fixture.ts'

describe('sampleOf', () => {
  const samples = [
    { id: 'G', kind: 'grab' },
    { id: 'C', kind: 'composite' },
    { id: 'S', kind: 'split' },
  ] as const

  it('is what the record says of the sample of that id', () => {
    expect([sampleOf('C', { samples }), sampleOf('S', { samples })]).toEqual([
      { sampleKind: 'composite' },
      { sampleKind: 'split' },
    ])
    expect(sampleOf('R', { samples: [{ id: 'R', kind: 'composite', duty: 'regular' }] })).toEqual({
      sampleKind: 'composite',
      duty: 'regular',
    })
  })
  it('is a grab where the record has no such sample', () => {
    expect(sampleOf('X', { samples })).toEqual({ sampleKind: 'grab' })
    expect(sampleOf('C', { samples: [] })).toEqual({ sampleKind: 'grab' })
  })
})

describe('isQuantity', () => {
  it('tells a quantity alone from a specimen with its sizes', () => {
    expect(isQuantity(q('78.4 kN', 'force'))).toBe(true)
    expect(isQuantity({ load: q('78.4 kN', 'force') })).toBe(false)
  })
})
