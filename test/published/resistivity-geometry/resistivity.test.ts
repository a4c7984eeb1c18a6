import { describe, expect, it } from 'vitest'
import { atTemperature, bulkResistivityOhmMetre } from '../../../src/core/resistivity/bulk-resistivity.ts'
import { onlyCase } from '../values.ts'

// Definition rho = R A/L with the end contacts in series; values computed apart, in values.json.
describe('bulk resistivity of cube and cylinder', () => {
  it('gives the values of values.json with the end contacts taken off', () => {
    const { inputs, expected } = onlyCase('resistivity-geometry')
    const cases = inputs['cases'] as {
      R_ohm: number
      pads_ohm: number[]
      A_mm2?: number
      diameter_mm?: number
      L_mm: number
    }[]
    const wanted = expected['ohm_m'] as number[]
    cases.forEach(({ R_ohm, pads_ohm, A_mm2, diameter_mm = 0, L_mm }, index) => {
      const area = A_mm2 ?? (Math.PI * diameter_mm ** 2) / 4
      const value = bulkResistivityOhmMetre(
        R_ohm,
        pads_ohm.reduce((sum, pad) => sum + pad, 0),
        area,
        L_mm,
      )
      expect(Math.abs(value / (wanted[index] ?? 0) - 1)).toBeLessThan(1e-9)
    })
  })
})

// Arrhenius law with 20 kJ/mol; ratios to the reading at 23 °C as tabled for the project (derived there by
// hand from the same law).
describe('temperature of reading', () => {
  it.each([
    [18, 1.15],
    [20, 1.09],
    [21, 1.06],
    [26, 0.92],
    [30, 0.83],
    [50, 0.51],
  ])('reads at %d °C the factor %f of the value at 23 °C', (readAt, factor) => {
    expect(1 / atTemperature(1, { readAt, wanted: 23, activationEnergy: 20 })).toBeCloseTo(factor, 2)
  })
  it('leaves a value read at the wanted temperature as it is, and comes back from there and back again', () => {
    expect(atTemperature(40, { readAt: 23, wanted: 23, activationEnergy: 20 })).toBe(40)
    expect(
      atTemperature(atTemperature(40, { readAt: 30, wanted: 23, activationEnergy: 20 }), {
        readAt: 23,
        wanted: 30,
        activationEnergy: 20,
      }),
    ).toBeCloseTo(40, 12)
  })
})
