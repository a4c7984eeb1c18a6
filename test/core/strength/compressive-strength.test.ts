import { readMoment } from '../../../src/core/measure/moment.ts'
import { readAge } from '../../../src/core/measure/age.ts'
import { describe, expect, it } from 'vitest'
import type { SpecimenShape, StrengthSpecimen } from '../../../src/core/mortar/mortar.ts'
import {
  COMPRESSIVE_STRENGTH,
  specimenStrength,
  strengthMPa,
} from '../../../src/core/strength/compressive-strength.ts'
import { q, WARM } from '../readings/fixture.ts'

const mm = (value: number) => q(`${value} mm`, 'length')
const CUBE: SpecimenShape = { shape: 'cube', side: mm(50) }
const value = (specimen: StrengthSpecimen, shape?: SpecimenShape) => specimenStrength(specimen, shape).value

describe('strengthMPa', () => {
  it('is newtons over square millimetres: 80 kN on 1600 mm² are 50 MPa', () => {
    expect(strengthMPa(80, 1600)).toBe(50)
  })
})

describe('specimenStrength', () => {
  // Worked by hand: 80 kN over 40 mm × 40 mm = 80 000 N / 1600 mm² = 50 MPa; 100 kN over π/4 × 50² = 1963.495
  // mm²: 50.930 MPa.
  it.each([
    [{ shape: 'half-prism', side: mm(40) } as const, '80 kN', 50],
    [{ shape: 'prism', side: mm(40), length: mm(160) } as const, '80 kN', 50],
    [CUBE, '100 kN', 40],
    [{ shape: 'cylinder', diameter: mm(50), length: mm(100) } as const, '100 kN', 50.929581789],
  ])('is load over the loaded area of %o', (shape, load, wanted) => {
    expect(value(q(load, 'force'), shape)).toBeCloseTo(wanted, 8)
  })
  it('takes measured sizes before nominal ones, a stated area before both', () => {
    const load = q('100 kN', 'force')
    expect(value({ load, side: mm(50), 'other-side': mm(51) }, CUBE)).toBeCloseTo(100_000 / 2550, 12)
    expect(value({ load, area: q('25 cm2', 'area') }, { shape: 'cube', side: mm(9) })).toBe(40)
  })
  // A two-inch cube has 2580.64 mm², 3.2 % more than a 50 mm cube.
  it('does not take a two-inch cube for one of 50 mm', () => {
    expect(value(q('100 kN', 'force'), { shape: 'cube', side: q('2 in', 'length') })).toBeCloseTo(
      100_000 / 2580.64,
      10,
    )
  })
  // 16 240 lbf over 4.00 in² are 4060 psi, as the laboratory that reads pounds-force reports it; over 50 mm squared
  // they would be 4191.
  const PSI_MPA = 4.4482216152605 / 25.4 ** 2
  it.each(['16240 lbf', '16.24 kip'])('assumes a cube of 2 in for %s where no mould is on record', (load) => {
    const found = specimenStrength(q(load, 'force'), CUBE)
    expect((found.value ?? 0) / PSI_MPA).toBeCloseTo(4060, 8)
    expect(found.terms).toEqual([
      {
        does: 'divided-by',
        value: expect.closeTo(2580.64, 9) as number,
        unit: 'mm2',
        assumed: { written: '4.00 in2', of: '2 in' },
      },
    ])
  })
  it('assumes nothing where the mould, a measured side or another size is known', () => {
    const load = q('16240 lbf', 'force')
    const psi = (specimen: StrengthSpecimen, shape: SpecimenShape) => (value(specimen, shape) ?? 0) / PSI_MPA
    const of50 = (16240 * 25.4 ** 2) / 2500
    expect(psi(load, { ...CUBE, ofMould: true })).toBeCloseTo(of50, 8)
    expect(psi({ load, side: mm(50) }, CUBE)).toBeCloseTo(of50, 8)
    expect(psi(load, { shape: 'cube', side: mm(100) })).toBeCloseTo(of50 / 4, 8)
    expect(psi(load, { shape: 'half-prism', side: mm(50) })).toBeCloseTo(of50, 8)
    expect(specimenStrength(load, { shape: 'cube', side: q('2 in', 'length') }).terms).toEqual([
      { does: 'divided-by', value: expect.closeTo(2580.64, 9) as number, unit: 'mm2' },
    ])
  })
  it('says what was done to the reading: the load as written over the area', () => {
    expect(specimenStrength(q('100 kN', 'force'), CUBE)).toEqual({
      value: 40,
      written: '100 kN',
      areaMm2: 2500,
      terms: [{ does: 'divided-by', value: 2500, unit: 'mm2' }],
    })
  })
  it('takes a stated strength as it is, alone or among sizes', () => {
    const stated = { value: 30.5, written: '30.5 MPa', terms: [] }
    expect(specimenStrength(q('30.5 MPa', 'stress'), CUBE)).toEqual(stated)
    expect(specimenStrength({ strength: q('30.5 MPa', 'stress'), side: mm(51) }, CUBE)).toEqual(stated)
  })
  it('has no value without an area, and none without a reading', () => {
    expect(specimenStrength(q('100 kN', 'force'), undefined)).toEqual({
      value: null,
      written: '100 kN',
      terms: [],
    })
    expect(specimenStrength({ excluded: 'broke in the mould' }, CUBE)).toEqual({
      value: null,
      written: null,
      terms: [],
    })
  })
})

describe('COMPRESSIVE_STRENGTH', () => {
  it('reads the strengths of a mortar and the shape and ranges of its condition', () => {
    const readings = [{ age: readAge('7 d') }]
    const mortar = {
      condition: 'warm',
      laboratory: 'quay',
      cast: readMoment('2026-03-11'),
      strength: readings,
    }
    expect(COMPRESSIVE_STRENGTH.readingsOf(mortar)).toBe(readings)
    expect(COMPRESSIVE_STRENGTH.rangeRulesOf?.(WARM)).toBe(WARM.strength?.['batch-range'])
    expect(COMPRESSIVE_STRENGTH.specimenOf(q('100 kN', 'force'), { age: readAge('7 d') }, WARM).value).toBe(
      40,
    )
  })
  it('knows no shape and checks no range at a condition that describes no strength test', () => {
    const { strength: _none, ...silent } = WARM
    expect(COMPRESSIVE_STRENGTH.rangeRulesOf?.(silent)).toEqual([])
    expect(
      COMPRESSIVE_STRENGTH.specimenOf(q('100 kN', 'force'), { age: readAge('7 d') }, silent).value,
    ).toBeNull()
  })
  it('divides means as the strength activity index does, with the interval of strengths', () => {
    expect(COMPRESSIVE_STRENGTH.ratioOf(30, 40)).toBe(75)
    expect(COMPRESSIVE_STRENGTH.intervalOf([30, 30], [40, 40])).toMatchObject({
      method: 'fieller',
      low: 75,
      high: 75,
    })
  })
})
