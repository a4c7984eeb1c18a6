import { describe, expect, it } from 'vitest'
import {
  conductivity,
  ionicStrength,
  type PasteInputs,
  poreSolution,
  withHydroxide,
} from '../../../src/core/resistivity/pore-solution.ts'

describe('ionicStrength', () => {
  // (1 × 0.4 + 1 × 0.2 + 4 × 0.1 + 4 × 0.05)/2.
  it('is half the sum of concentrations times squared charges', () => {
    expect(ionicStrength({ OH: 0.4, K: 0.2, Ca: 0.1, SO4: 0.05 })).toBeCloseTo(0.6, 12)
    expect(ionicStrength({})).toBe(0)
  })
})

describe('conductivity', () => {
  // I = 0.25, √I = 0.5: Na 0.25 × 50.1/(1 + 0.733 × 0.5) = 9.16575, OH 0.25 × 198/(1 + 0.353 × 0.5) = 42.07395;
  // together 51.2397 cm² S/mol × mol/L, a tenth of it in S/m.
  it('adds what each ion carries, lessened by the root of the ionic strength', () => {
    expect(conductivity({ Na: 0.25, OH: 0.25 })).toBeCloseTo(5.12397, 4)
    expect(conductivity({})).toBe(0)
  })
})

describe('withHydroxide', () => {
  it('balances the charges with hydroxide: 0.3 + 0.2 + 2 × 0.02 − 2 × 0.05', () => {
    expect(withHydroxide({ Na: 0.3, K: 0.2, Ca: 0.02, SO4: 0.05 }).OH).toBeCloseTo(0.44, 12)
  })
  it('has none where sulfate outweighs the others', () => {
    expect(withHydroxide({ Na: 0.1, SO4: 0.1 }).OH).toBe(0)
  })
})

describe('poreSolution', () => {
  const paste: PasteInputs = {
    cementAlkalis: 0.62,
    materialAlkalis: 1.24,
    replacement: 0.5,
    waterToCementitious: 0.5,
    cementReaction: 0.8,
    materialReaction: 0.4,
    bound: 0.25,
  }
  // Reacted 0.5 × 0.8 + 0.5 × 0.4 = 0.6; water left 0.5 − 0.23 × 0.6 = 0.362 mL a gram; soda (0.4 × 0.62 + 0.2 ×
  // 1.24)/100 = 0.00496 g; sodium 0.75 × 2 × 0.00496/61.979 mol in 0.000362 L = 0.33160 mol/L.
  it('sets alkalis free as far as both materials react, binds a share, and leaves the free water', () => {
    expect(poreSolution(paste).Na).toBeCloseTo(0.3316, 5)
    expect(poreSolution(paste).OH).toBeCloseTo(0.3316, 5)
  })
  it('refuses a paste whose water the reaction takes, to the last drop', () => {
    const dry = { ...paste, replacement: 0, cementReaction: 1, waterToCementitious: 0.23 }
    expect(() => poreSolution(dry)).toThrow(/^poreSolution needs water left after reaction, got 0.23 g per g/)
    expect(poreSolution({ ...dry, waterToCementitious: 0.24 }).Na).toBeGreaterThan(0)
  })
})
