import { describe, expect, it } from 'vitest'
import { batchResistivity } from '../../../src/core/resistivity/bulk-resistivity.ts'
import { batchStrength } from '../../../src/core/strength/compressive-strength.ts'
import { crossSectionMm2, electrodeDistanceMm } from '../../../src/core/mortar/cross-section.ts'
import { type Quantity, type QuantityKind, readQuantity } from '../../../src/core/measure/units.ts'

function q(text: string, kind: QuantityKind): Quantity {
  return readQuantity(text, kind) as Quantity
}
const mm = (value: number) => q(`${value} mm`, 'length')

describe('batchStrength by shape of the specimen', () => {
  // Worked by hand: 80 kN over 40 mm × 40 mm = 80 000 N / 1600 mm² = 50 MPa; 100 kN over π/4 × 50² = 1963.495
  // mm²: 50.930 MPa.
  it.each([
    [{ shape: 'half-prism', side: mm(40) } as const, '80 kN', 50],
    [{ shape: 'prism', side: mm(40), length: mm(160) } as const, '80 kN', 50],
    [{ shape: 'cube', side: mm(50) } as const, '100 kN', 40],
    [{ shape: 'cylinder', diameter: mm(50), length: mm(100) } as const, '100 kN', 50.929581789],
  ])('is load over the loaded area of %o', (shape, load, wanted) => {
    expect(batchStrength({ age: '28 d', specimens: { a: q(load, 'force') } }, shape).meanMPa).toBeCloseTo(
      wanted,
      8,
    )
  })
  it('takes measured sizes before nominal ones, a stated area before both', () => {
    const cube = { shape: 'cube', side: mm(50) } as const
    const load = q('100 kN', 'force')
    expect(
      batchStrength({ age: '28 d', specimens: { a: { load, side: mm(50), 'other-side': mm(51) } } }, cube)
        .meanMPa,
    ).toBeCloseTo(100_000 / 2550, 12)
    expect(
      batchStrength({ age: '28 d', specimens: { a: { load, area: q('25 cm2', 'area') } } }, cube).meanMPa,
    ).toBe(40)
  })
  // A two-inch cube has 2580.64 mm², 3.2 % more than a 50 mm cube.
  it('does not take a two-inch cube for one of 50 mm', () => {
    const inch =
      batchStrength(
        { age: '28 d', specimens: { a: q('100 kN', 'force') } },
        { shape: 'cube', side: q('2 in', 'length') },
      ).meanMPa ?? 0
    expect(inch).toBeCloseTo(100_000 / 2580.64, 10)
  })
  it('has no mean without a size or without a specimen that counts, and says why', () => {
    expect(
      batchStrength({ age: '28 d', specimens: { a: q('100 kN', 'force') } }, { shape: 'cube' }),
    ).toMatchObject({ meanMPa: null, valid: false, reasons: ['the loaded area is not known'] })
    const lost = { a: { load: q('60 kN', 'force'), excluded: 'corner lost' } }
    expect(batchStrength({ age: '28 d', specimens: lost }, { shape: 'cube', side: mm(50) })).toMatchObject({
      meanMPa: null,
      valid: false,
      reasons: ['specimen a excluded: corner lost', 'no specimen counts'],
    })
  })
  it('drops the cube farthest from the mean and says so: 100.0, 102.5, 111.25 kN', () => {
    const rules = [
      { of: 3, 'at-most': q('8.7 %', 'fraction') },
      { of: 2, 'at-most': q('7.6 %', 'fraction') },
    ]
    const batch = batchStrength(
      {
        age: '28 d',
        specimens: { a: q('100.0 kN', 'force'), b: q('102.5 kN', 'force'), c: q('111.25 kN', 'force') },
      },
      { shape: 'cube', side: mm(50) },
      rules,
    )
    expect(batch).toMatchObject({ meanMPa: 40.5, n: 2, counted: ['a', 'b'], valid: true })
    expect(batch.reasons).toEqual([
      'the range of 3 specimens is 10.8 % of the mean, over 8.7 %; specimen c, farthest from the mean, is dropped',
    ])
  })
})

describe('batchResistivity by shape of the specimen', () => {
  // Worked by hand, R A/L: 800 Ω × 2500 mm²/50 mm = 40 Ω m; 4000 × 1600/160 = 40; half the prism's length:
  // 80; 800 × 1963.495/100 = 15.708.
  it.each([
    [{ shape: 'cube', side: mm(50) } as const, '800 ohm', 40],
    [{ shape: 'prism', side: mm(40), length: mm(160) } as const, '4000 ohm', 40],
    [{ shape: 'half-prism', side: mm(40), length: mm(80) } as const, '4 kohm', 80],
    [{ shape: 'cylinder', diameter: mm(50), length: mm(100) } as const, '800 ohm', 15.707963268],
  ])('is resistance times section over length of %o', (shape, resistance, wanted) => {
    expect(
      batchResistivity({ age: '28 d', specimens: { a: q(resistance, 'resistance') } }, shape).meanOhmMetre,
    ).toBeCloseTo(wanted, 8)
  })
  it('reads 800 Ω on a 50 mm cube and 4 kΩ cm as the same', () => {
    const cube = { shape: 'cube', side: mm(50) } as const
    expect(
      batchResistivity({ age: '28 d', specimens: { a: q('4 kohm cm', 'resistivity') } }, cube).meanOhmMetre,
    ).toBe(40)
  })
  it('takes the end contacts off each reading', () => {
    const batch = batchResistivity(
      {
        age: '28 d',
        'end-contact': q('4 ohm', 'resistance'),
        specimens: { a: q('804 ohm', 'resistance'), b: q('844 ohm', 'resistance') },
      },
      { shape: 'cube', side: mm(50) },
    )
    expect(batch).toMatchObject({ meanOhmMetre: 41, n: 2, valid: true })
  })
  it('is not valid where the end contacts are as large as the reading', () => {
    const batch = batchResistivity(
      {
        age: '28 d',
        'end-contact': q('800 ohm', 'resistance'),
        specimens: { a: q('800 ohm', 'resistance') },
      },
      { shape: 'cube', side: mm(50) },
    )
    expect(batch).toMatchObject({
      valid: false,
      reasons: ['the end contacts are as large as the reading itself'],
    })
  })
  it('has no mean where the length is not known, and says why', () => {
    expect(
      batchResistivity(
        { age: '28 d', specimens: { a: q('800 ohm', 'resistance') } },
        { shape: 'prism', side: mm(40) },
      ),
    ).toMatchObject({
      meanOhmMetre: null,
      valid: false,
      reasons: ['the geometry of a specimen is not known'],
    })
  })
})

describe('cross-section and distance of the electrodes', () => {
  it('come from the measured sizes alone where no shape is given', () => {
    expect(crossSectionMm2(undefined, { side: mm(50), 'other-side': mm(52) })).toBe(2600)
    expect(crossSectionMm2(undefined, { diameter: mm(100) })).toBeCloseTo(7853.981634, 6)
    expect(electrodeDistanceMm(undefined, { length: mm(75) })).toBe(75)
    expect(electrodeDistanceMm(undefined, { side: mm(50) })).toBeNull()
  })
})
