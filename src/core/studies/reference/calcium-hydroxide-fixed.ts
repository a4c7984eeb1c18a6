/** Calcium hydroxide that a material fixed from lime suspension: the modified Chapelle test. */
import { MOLAR_MASS } from './molar-masses.ts'
import type { ReferenceFault } from './reference-fault.ts'

export interface FixationTest {
  readonly materialG: number
  /** Lime in the test, and in the blank, g. */
  readonly limeG: number
  readonly blankLimeG: number
  readonly acidMmolPerL: number
  /** Acid that an aliquot of the filtrate took, mL, and that of the blank. */
  readonly sampleMl: number
  readonly blankMl: number
  readonly aliquotMl: number
  /** All of the suspension that the aliquot stands for. */
  readonly totalMl: number
}

export interface CalciumHydroxideFixed {
  readonly value: number
  /** Blank made to the lime of the test, mL. */
  readonly blankMl: number
  /** mg of calcium hydroxide that the test has less than its blank. */
  readonly fixedMg: number
}

/**
 * Calcium hydroxide fixed.
 * @returns mg per g of material, with its steps; a fault where the blank took less acid than the sample
 * Note: what alkalis of the material give off is titrated with the lime and lowers the figure.
 * Source: modified Chapelle test, NF P18-513, annex A: outline read at metakaolin.info (1 g of material, 2 g of CaO in 250 mL, 90 °C,
 * blank alike), its formula from memory, with the acid's molarity in place of the blank's known lime: both agree where the blank
 * finds all lime.
 */
export function calciumHydroxideFixed(test: FixationTest): CalciumHydroxideFixed | ReferenceFault {
  const { materialG, limeG, blankLimeG, acidMmolPerL, sampleMl, aliquotMl, totalMl } = test
  if (totalMl < aliquotMl) return { fault: 'aliquot-above-total', aliquotMl, totalMl }
  // V₁' = V₁ m_lime / m_lime,blank.
  const blankMl = (test.blankMl * limeG) / blankLimeG
  if (blankMl < sampleMl) return { fault: 'blank-below-sample', blankMl, sampleMl }
  // (V₁' − V₂) c/2 · 74.093 · V_total/V_aliquot; two of acid to one of hydroxide.
  const fixedMg =
    ((((blankMl - sampleMl) * acidMmolPerL) / 1000 / 2) * MOLAR_MASS.calciumHydroxide * totalMl) / aliquotMl
  return { value: fixedMg / materialG, blankMl, fixedMg }
}
