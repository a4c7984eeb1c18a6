/** Calcium hydroxide that a material consumed, from what was put in and what a thermogram still finds. */
import {
  type CalciumHydroxideContent,
  calciumHydroxideContent,
  type Thermogram,
} from './calcium-hydroxide-content.ts'
import { MOLAR_MASS } from './molar-masses.ts'
import { isReferenceFault, type ReferenceFault } from './reference-fault.ts'

/** Masses that a paste was mixed of, g. */
export interface PasteMix {
  readonly calciumHydroxideG: number
  /** Null in a blank. */
  readonly materialG: number | null
  readonly waterG: number
  /** What else stays through ignition, such as alkali sulfate. */
  readonly otherG: number
  /** What the material itself loses on ignition, share from 0 to 1. */
  readonly materialLoss: number
}

export interface ConsumptionTest extends Thermogram {
  readonly mix: PasteMix
  /** A paste of the same lime without the material, on its own basis; null where the lime counts as put in. */
  readonly blank: (Thermogram & { readonly mix: PasteMix }) | null
}

export interface CalciumHydroxideConsumed {
  readonly value: number
  readonly content: CalciumHydroxideContent
  readonly blankContent: CalciumHydroxideContent | null
  /** Of the lime put in, the share that counts as hydroxide: 1 without a blank. */
  readonly limeShare: number
  /** g of calcium hydroxide put in and left, and of material, all in the paste as mixed. */
  readonly putInG: number
  readonly leftG: number
  readonly materialG: number
}

/**
 * Calcium hydroxide consumed.
 * @param test mixed with a material
 * @returns g per 100 g of material, with its steps; a fault of a thermogram
 * @throws RangeError for a mix without material
 * Notes: 1. below zero stays, for an inert material may read so; 2. on the initial basis the sample is taken as paste with all its
 * water; 3. on the ignited basis the paste as mixed is reckoned with lime as CaO.
 * Source: balance of calcium hydroxide over the paste as mixed; own derivation.
 */
export function calciumHydroxideConsumed(test: ConsumptionTest): CalciumHydroxideConsumed | ReferenceFault {
  const { mix, blank, basis } = test
  const materialG = mix.materialG ?? 0
  if (materialG <= 0)
    throw new RangeError(`calciumHydroxideConsumed needs material in its paste, got ${materialG} g`)
  const content = calciumHydroxideContent(test)
  if (isReferenceFault(content)) return content
  const blankContent = blank === null ? null : calciumHydroxideContent(blank)
  if (blankContent !== null && isReferenceFault(blankContent)) return blankContent
  // f = (c_blank/100) m_basis,blank / m(Ca(OH)₂),blank.
  const limeShare =
    blank === null || blankContent === null
      ? 1
      : ((blankContent.value / 100) * basisMassG(blank.mix, blank.basis)) / blank.mix.calciumHydroxideG
  const putInG = limeShare * mix.calciumHydroxideG
  const leftG = (content.value / 100) * basisMassG(mix, basis)
  // 100 (f m(Ca(OH)₂) − (c/100) m_basis) / m_material.
  return {
    ...{ value: (100 * (putInG - leftG)) / materialG, content, blankContent },
    ...{ limeShare, putInG, leftG, materialG },
  }
}

/**
 * Mass of a paste as mixed on the basis that a content is referred to.
 * @param basis all of it with its water, or what is left after ignition
 * @returns g
 */
export function basisMassG(
  { calciumHydroxideG, materialG, waterG, otherG, materialLoss }: PasteMix,
  basis: Thermogram['basis'],
): number {
  const material = materialG ?? 0
  if (basis === 'initial') return calciumHydroxideG + material + waterG + otherG
  // Ca(OH)₂ leaves CaO: 56.077/74.093.
  const lime = (calciumHydroxideG * MOLAR_MASS.lime) / MOLAR_MASS.calciumHydroxide
  return lime + material * (1 - materialLoss) + otherG
}
