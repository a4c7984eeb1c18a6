import { describe, expect, it } from 'vitest'
import { annex } from '../../../src/edition/views/annex.ts'
import { certificate, index, mortar, result } from './certificate-fixture.ts'

const working = [
  { label: 'test mean', expression: 'mean of a, b', value: 28.4, unit: 'MPa', decimals: 2 },
  { label: 'note', expression: 'cast 2026-03-10', source: 'own' },
]

describe('annex', () => {
  it('gives an index first, and no working to what its own working holds already', () => {
    const strength = result({
      property: 'compressive-strength',
      condition: 'warm',
      age: '28 d',
      unit: 'MPa',
      working,
    })
    const own = annex(
      certificate({ results: [result({ working }), strength, index({ working })], verdicts: [] }),
    )
    expect(own?.workings.map(({ name, value }) => [name, value])).toEqual([
      ['Strength activity index, 50 %, 50 °C, 28 d', '83.3\u00a0%'],
      ['Loss on ignition', '2.14\u00a0%'],
    ])
  })
  it('prints each step with its value or source, then what every set makes of the result', () => {
    const [own] = annex(certificate({ results: [result({ working })] }))?.workings ?? []
    expect(own?.lines).toEqual([
      { label: 'test mean', text: 'mean of a, b', note: null, value: '28.40\u00a0MPa', outcome: null },
      { label: 'note', text: 'cast 10\u00a0March 2026', note: 'own', value: '', outcome: null },
      {
        label: 'VALE 1, edition 1',
        text: '2.1 % (2.14 before rounding) meets the limit, at most 10.0 %.',
        note: null,
        value: '',
        outcome: 'meets',
      },
    ])
  })
  it('is null without a working or a mortar', () => {
    expect(annex(certificate())).toBeNull()
    expect(annex(certificate({ mortars: [mortar()] }))?.readings).toHaveLength(1)
  })
})
