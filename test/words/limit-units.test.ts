import { describe, expect, it } from 'vitest'
import { besideLimit } from '../../src/words/limit-units.ts'

const beside = (value: number, decimals: number, unit: string, limit: string) =>
  besideLimit({ value, decimals, unit }, { written: [limit] })

describe('besideLimit', () => {
  it('gives a specific surface in the unit of its limit: 1 m2/g is 1000 m2/kg, 1 m2/kg is 10 cm2/g', () => {
    expect(beside(20_400, 0, 'm2/kg', '15 m2/g')).toEqual({ value: 20.4, decimals: 1, unit: 'm2/g' })
    expect(beside(20_000, 0, 'm2/kg', '15 m2/g')).toEqual({ value: 20, decimals: 0, unit: 'm2/g' })
    expect(beside(438, 0, 'm2/kg', '2500 cm2/g')).toEqual({ value: 4380, decimals: 0, unit: 'cm2/g' })
  })
  it('leaves a figure beside a limit in its stored unit alone, and one that would lose digits', () => {
    for (const [value, decimals, unit, limit] of [
      [438, 0, 'm2/kg', '275 m2/kg'],
      [34.1, 1, 'MPa', '3000 psi'],
      [23, 1, 'degC', '73 degF'],
      [2.14, 2, '%', '6.0 %'],
      [0.485, 3, '', '0.485'],
    ] as const)
      expect(beside(value, decimals, unit, limit)).toEqual({ value, decimals, unit })
  })
})
