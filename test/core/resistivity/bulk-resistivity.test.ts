import { describe, expect, it } from 'vitest'
import type { ResistivitySpecimen, SpecimenShape } from '../../../src/core/mortar/mortar.ts'
import {
  atTemperature,
  bulkResistivityOhmMetre,
  specimenResistivity,
} from '../../../src/core/resistivity/bulk-resistivity.ts'
import { q } from '../readings/fixture.ts'

const mm = (value: number) => q(`${value} mm`, 'length')
const CUBE: SpecimenShape = { shape: 'cube', side: mm(50) }
const value = (specimen: ResistivitySpecimen, shape?: SpecimenShape, contact = 0) =>
  specimenResistivity(specimen, shape, contact).value

describe('bulkResistivityOhmMetre', () => {
  // (1004 − 4) Ω × 2500 mm² / 100 mm = 25 000 Ω mm = 25 Ω m.
  it('is resistance less contacts, times section, over length', () => {
    expect(bulkResistivityOhmMetre(1004, 4, 2500, 100)).toBe(25)
  })
})

describe('atTemperature', () => {
  // 8.314462618 J/(mol K) and 1000 J/mol: E/R = 120.272363 K; 1/273.15 − 1/373.15 = 9.811 × 10⁻⁴ per K;
  // exp(0.1179986) = 1.125242.
  it('raises the resistivity towards the cold by Arrhenius’ law', () => {
    expect(atTemperature(1, { readAt: 100, wanted: 0, activationEnergy: 1 })).toBeCloseTo(1.125243, 5)
    expect(atTemperature(1, { readAt: 0, wanted: 100, activationEnergy: 1 })).toBeCloseTo(1 / 1.125243, 5)
  })
  // By hand, −d ln ρ/dT = E/(R T²) at T = 296.15 K: R T² = 8.314462618 × 87 704.82 = 729 218.5 J K/mol;
  // 15 000/729 218.5 = 0.020570, 20 000 gives 0.027427, 25 000 gives 0.034283. The method page prints 2.1, 2.7, 3.4 %.
  it.each([
    [15, 2.06],
    [20, 2.74],
    [25, 3.43],
  ])('changes a resistivity at 23 °C with %d kJ/mol by %d %% per degree', (activationEnergy, percent) => {
    const at = (celsius: number) => atTemperature(1, { readAt: 23, wanted: celsius, activationEnergy })
    expect((100 * (at(22.5) - at(23.5))) / at(23)).toBeCloseTo(percent, 2)
  })
})

describe('specimenResistivity', () => {
  // Worked by hand, R A/L: 800 Ω × 2500 mm²/50 mm = 40 Ω m; 4000 × 1600/160 = 40; half the prism's length:
  // 80; 800 × 1963.495/100 = 15.708.
  it.each([
    [CUBE, '800 ohm', 40],
    [{ shape: 'prism', side: mm(40), length: mm(160) } as const, '4000 ohm', 40],
    [{ shape: 'half-prism', side: mm(40), length: mm(80) } as const, '4 kohm', 80],
    [{ shape: 'cylinder', diameter: mm(50), length: mm(100) } as const, '800 ohm', 15.707963268],
  ])('is resistance times section over length of %o', (shape, resistance, wanted) => {
    expect(value(q(resistance, 'resistance'), shape)).toBeCloseTo(wanted, 8)
  })
  it('reads 800 Ω on a 50 mm cube and 4 kΩ cm as the same, the end contacts off the first alone', () => {
    expect(value(q('4 kohm cm', 'resistivity'), CUBE)).toBe(40)
    expect(value(q('804 ohm', 'resistance'), CUBE, 4)).toBe(40)
    expect(value(q('4 kohm cm', 'resistivity'), CUBE, 4)).toBe(40)
  })
  it('says what was done to the reading, in this order, and nothing of contacts that are nought', () => {
    const sizes = [
      { does: 'times', value: 2500, unit: 'mm2' },
      { does: 'divided-by', value: 50, unit: 'mm' },
    ]
    expect(specimenResistivity(q('804 ohm', 'resistance'), CUBE, 4)).toEqual({
      value: 40,
      written: '804 ohm',
      terms: [{ does: 'less-end-contact', value: 4, unit: 'ohm' }, ...sizes],
    })
    expect(specimenResistivity(q('800 ohm', 'resistance'), CUBE, 0).terms).toEqual(sizes)
  })
  it('takes a stated resistivity as it is, alone or among sizes', () => {
    const stated = { value: 41.5, written: '41.5 ohm m', terms: [] }
    expect(specimenResistivity(q('41.5 ohm m', 'resistivity'), CUBE, 4)).toEqual(stated)
    expect(
      specimenResistivity({ resistivity: q('41.5 ohm m', 'resistivity'), side: mm(51) }, CUBE, 4),
    ).toEqual(stated)
  })
  it('has no value where section or length is not known, and none without a reading', () => {
    const unknown = { value: null, written: '800 ohm', terms: [] }
    const resistance = q('800 ohm', 'resistance')
    expect(specimenResistivity(resistance, { shape: 'prism', side: mm(40) }, 4)).toEqual(unknown)
    expect(specimenResistivity(resistance, { shape: 'prism', length: mm(160) }, 4)).toEqual(unknown)
    expect(specimenResistivity({ excluded: 'cracked' }, CUBE, 4)).toEqual({
      value: null,
      written: null,
      terms: [],
    })
  })
  it('has no value where the contacts are the whole reading, or more than it', () => {
    expect(value(q('4 ohm', 'resistance'), CUBE, 4)).toBeNull()
    expect(value(q('3 ohm', 'resistance'), CUBE, 4)).toBeNull()
    expect(value(q('5 ohm', 'resistance'), CUBE, 4)).toBeCloseTo(0.05, 12)
  })
})
