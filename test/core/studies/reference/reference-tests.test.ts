import { describe, expect, it } from 'vitest'
import { boundWater } from '../../../../src/core/studies/reference/bound-water.ts'
import {
  type CalciumHydroxideFixed,
  calciumHydroxideFixed,
} from '../../../../src/core/studies/reference/calcium-hydroxide-fixed.ts'
import { limeStrength } from '../../../../src/core/studies/reference/lime-strength.ts'
import {
  pozzolanicity,
  type PozzolanicityTest,
  saturatedLime,
} from '../../../../src/core/studies/reference/pozzolanicity.ts'

describe('boundWater', () => {
  // By hand: 0.6 of 10 g is 6, 0.33 of 5 g is 6.6; mean 6.3.
  it('is the loss over the dried paste, mean of the crucibles', () => {
    const found = boundWater([
      { crucibleG: 20, driedG: 30, ignitedG: 29.4 },
      { crucibleG: 21, driedG: 26, ignitedG: 25.67 },
    ])
    expect(found).toEqual({
      value: expect.closeTo(6.3, 10) as number,
      each: [expect.closeTo(6, 10), expect.closeTo(6.6, 10)],
    })
  })
  it('is zero where nothing is lost', () => {
    expect(boundWater([{ crucibleG: 20, driedG: 30, ignitedG: 30 }])).toMatchObject({ value: 0 })
  })
  it('names the crucible whose masses are in the wrong order', () => {
    const sound = { crucibleG: 20, driedG: 30, ignitedG: 29 }
    expect(boundWater([sound, { ...sound, ignitedG: 30.1 }])).toEqual({
      ...{ fault: 'crucible-order', place: 1, wrong: 'ignited' },
    })
    expect(boundWater([{ ...sound, crucibleG: 29 }, sound])).toEqual({
      ...{ fault: 'crucible-order', place: 0, wrong: 'crucible' },
    })
  })
})

const CHAPELLE = {
  ...{ materialG: 1, limeG: 2, blankLimeG: 2, acidMmolPerL: 100, aliquotMl: 25, totalMl: 250 },
  ...{ sampleMl: 20, blankMl: 71.33 },
}

describe('calciumHydroxideFixed', () => {
  // By hand: 51.33 mL × 0.1 mmol/mL / 2 = 2.5665 mmol in 25 mL, 25.665 in 250 mL; × 74.093 = 1901.6 mg.
  it('is the lime that the blank has and the sample has not', () => {
    expect((calciumHydroxideFixed(CHAPELLE) as CalciumHydroxideFixed).value).toBeCloseTo(1901.597, 3)
  })
  // 2 g of CaO are 35.665 mmol, so a blank that finds all takes 71.33 mL; then the formula of the method,
  // 2 (V₁ − V₂)/V₁ × 74/56 × 1000 (from memory), gives 1901.83 with its rounded molar masses.
  it('agrees with the formula of the method where the blank finds all lime', () => {
    const byMethod = ((2 * (71.33 - 20)) / 71.33) * (74 / 56) * 1000
    expect((calciumHydroxideFixed(CHAPELLE) as CalciumHydroxideFixed).value).toBeCloseTo(byMethod, -1)
    expect(byMethod).toBeCloseTo(1901.83, 2)
  })
  // A blank of 1 g of lime and half of the acid stands for the same.
  it('makes the blank to the lime of the test', () => {
    const half = calciumHydroxideFixed({ ...CHAPELLE, blankLimeG: 1, blankMl: 35.665 })
    expect(half).toEqual(calciumHydroxideFixed(CHAPELLE))
  })
  it('refuses a sample that took more acid than its blank, and an aliquot larger than the whole', () => {
    expect(calciumHydroxideFixed({ ...CHAPELLE, sampleMl: 71.34 })).toMatchObject({
      fault: 'blank-below-sample',
    })
    expect(calciumHydroxideFixed({ ...CHAPELLE, sampleMl: 71.33 })).toMatchObject({ value: 0 })
    expect(calciumHydroxideFixed({ ...CHAPELLE, totalMl: 24 })).toMatchObject({
      fault: 'aliquot-above-total',
    })
  })
})

const POINT: PozzolanicityTest = {
  ...{ aliquotMl: 50, acidMmolPerL: 100, acidMl: 25, complexMmolPerL: 30, complexMl: 10, errorMl: 0.05 },
}

describe('saturatedLime', () => {
  // 350/35, 350/30, 350/75 by hand; the formula and its range are from memory.
  it('follows the curve at 40 °C within 45 to 90 mmol/L, both ends included', () => {
    expect(saturatedLime(50)).toBe(10)
    expect(saturatedLime(45)).toBeCloseTo(11.6667, 4)
    expect(saturatedLime(90)).toBeCloseTo(4.6667, 4)
    for (const hydroxide of [44.999, 90.001, 15, 0]) expect(saturatedLime(hydroxide)).toBeNull()
  })
})

describe('pozzolanicity', () => {
  // By hand: 100 × 25/50 = 50 and 30 × 10/50 = 6 mmol/L; 10 at saturation. Errors: 30 × 0.05/50 = 0.03, and
  // 350/35² = 0.2857 times 0.1: 0.0586.
  it('puts a point below the curve by both titrations', () => {
    expect(pozzolanicity(POINT)).toEqual({
      ...{ hydroxide: 50, lime: 6, saturated: 10, side: 'below' },
      error: expect.closeTo(0.058571, 6) as number,
    })
  })
  it.each([
    [16.5, 'below'],
    [16.6, 'too-near'],
    [16.7, 'too-near'],
    [16.8, 'above'],
  ] as const)('with %f mL of complexing agent says %s', (complexMl, side) => {
    expect(pozzolanicity({ ...POINT, complexMl }).side).toBe(side)
  })
  it('compares nothing outside the hydroxide of the curve', () => {
    for (const acidMl of [22.4, 45.1])
      expect(pozzolanicity({ ...POINT, acidMl })).toMatchObject({
        side: 'off-curve',
        saturated: null,
        error: null,
      })
  })
})

describe('limeStrength', () => {
  // 20 kN over 2500 mm² is 8 MPa, 22 kN 8.8 MPa.
  it('is the mean of loads over area', () => {
    expect(limeStrength([20, 22], 2500)).toEqual({ value: 8.4, each: [8, 8.8] })
  })
})
