/**
 * What the invented studies read: dilution by the share replaced, a reaction that temperature speeds up and lime limits, and soluble
 * alkali that conducts. The model is an own invention, made to lead where the trade says that such tests lead (common practice, no
 * source): hardly any separation by strength at 23 °C, a wide one at 50 °C.
 */
import type { StudyMaterial } from './study-materials.ts'

export interface ModelCondition {
  /** Share of cement replaced, %, and curing temperature, °C. */
  readonly replacement: 20 | 30 | 50
  readonly temperature: 23 | 40 | 50
  readonly ageDays: number
}

/** Strength left by dilution alone, and how much of a reaction each share replaced can feed: points, then for resistivity. */
const DILUTED = { 20: 0.86, 30: 0.73, 50: 0.48 }
const LIME = { 20: 40, 30: 60, 50: 17 }
const CONDUCTING = { 20: 1.05, 30: 1.03, 50: 0.9 }
const FED = { 20: 0.6, 30: 0.8, 50: 1 }
/** Activation energy of the reaction, J/mol, over the gas constant, K. */
const ACTIVATION_K = 70_000 / 8.314
const REFERENCE_K = 296.15

/** Control mortar: MPa and ohm m by temperature and age in days. */
const CONTROL = {
  23: { strength: { 7: 33.1, 28: 44.6 }, resistivity: { 7: 27, 28: 44 } },
  40: { strength: { 7: 38.4, 28: 42.9 }, resistivity: { 7: 36, 28: 53 } },
  50: { strength: { 7: 38.9, 28: 39.7 }, resistivity: { 7: 42, 28: 60 } },
} as const

/** What the control mortar reads. */
export function controlOf({ temperature, ageDays }: ModelCondition): {
  strength: number
  resistivity: number
} {
  const { strength, resistivity } = CONTROL[temperature]
  const age = ageDays === 7 ? 7 : 28
  return { strength: strength[age], resistivity: resistivity[age] }
}

/** Strength activity index of a material, as a ratio. */
export function strengthRatio(material: StudyMaterial, condition: ModelCondition): number {
  const { replacement } = condition
  const fed = (material.strength * reacted(material.rate, condition) * replacement) / 30
  const gained = LIME[replacement] * (1 - Math.exp(-fed / LIME[replacement]))
  return DILUTED[replacement] * (1 + material.filler) + gained / 100
}

/** Resistivity index of a material, as a ratio. */
export function resistivityRatio(material: StudyMaterial, condition: ModelCondition): number {
  const { replacement } = condition
  const alkali = material.composition[4]
  const gained = material.resistivity * reacted(material.resistivityRate, condition) * FED[replacement]
  return CONDUCTING[replacement] * Math.exp(gained - (0.2 * alkali * replacement) / 50)
}

/** Part of a material that has reacted. */
function reacted(rate: number, { temperature, ageDays }: ModelCondition): number {
  const faster = Math.exp(ACTIVATION_K * (1 / REFERENCE_K - 1 / (273.15 + temperature)))
  return 1 - Math.exp(-rate * faster * ageDays)
}
