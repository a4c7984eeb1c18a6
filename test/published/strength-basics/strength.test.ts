import { describe, expect, it } from 'vitest'
import { specimenStrength, strengthMPa } from '../../../src/core/strength/compressive-strength.ts'
import { readQuantity, type Quantity } from '../../../src/core/measure/units.ts'
import { onlyCase } from '../values.ts'

// Definition stress = load/area; pound-force and inch as in NIST SP 811, appendix B.8. The values were
// computed apart, in values.json.
describe('cube stress from load and size', () => {
  it('gives the stresses of values.json, in SI and US customary units', () => {
    const { inputs, expected } = onlyCase('strength-basics')
    const cubes = inputs['cubes'] as Record<string, number>[]
    const quantity = (text: string, kind: 'force' | 'length') => readQuantity(text, kind) as Quantity
    const stresses = cubes.map((cube) => {
      const inPounds = cube['load_lbf'] !== undefined
      const load = quantity(inPounds ? `${cube['load_lbf']} lbf` : `${cube['load_kN']} kN`, 'force')
      const side = quantity(inPounds ? `${cube['a_in']} in` : `${cube['a_mm']} mm`, 'length')
      const other = quantity(inPounds ? `${cube['b_in']} in` : `${cube['b_mm']} mm`, 'length')
      return specimenStrength({ load, side, 'other-side': other }, undefined).value ?? 0
    })
    const wanted = expected['MPa'] as number[]
    stresses.forEach((stress, index) => {
      expect(Math.abs(stress / (wanted[index] ?? 0) - 1)).toBeLessThan(1e-9)
    })
    const psi = readQuantity(`${expected['psi_last']} psi`, 'stress') as Quantity
    expect(Math.abs(psi.value / (stresses.at(-1) ?? 0) - 1)).toBeLessThan(1e-9)
  })
  it('gives 40 MPa for 100 kN on a 50 mm cube, worked by hand: 100 000 N / 2500 mm²', () => {
    expect(strengthMPa(100, 2500)).toBe(40)
  })
})
