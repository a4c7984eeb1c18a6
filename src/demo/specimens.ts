/** Cubes of a mortar on the bench: how they scatter, and their readings as written. */
import type { Chance } from './chance.ts'
import { flowMapping } from './flow-mapping.ts'

/** Coefficients of variation of a batch and of one specimen within it (invented, of usual size). */
const BATCH_CV = { strength: 0.018, resistivity: 0.03 }
export const SPECIMEN_CV = { strength: 0.02, resistivity: 0.02 }

export const END_CONTACT_OHM = 4.1
/** Area of a cube of 50 mm in thousands of mm²: kilonewtons a megapascal. */
const KILONEWTON_A_MPA = 2.5
/** Side of the cube. */
const SIDE_METRE = 0.05

/** Marks of the three cubes of an age. */
const MARKS = { 7: ['d', 'e', 'f'], 28: ['a', 'b', 'c'] } as const
export type Age = keyof typeof MARKS

/** Factors of one batch on the true values of its mortar. */
export interface BatchScatter {
  readonly strength: number
  readonly resistivity: number
}

export function batchScatter(chance: Chance): BatchScatter {
  return {
    strength: 1 + BATCH_CV.strength * chance.normal(),
    resistivity: 1 + BATCH_CV.resistivity * chance.normal(),
  }
}

/** Factors of three cubes on the strength of their batch. */
export function cubeFactors(chance: Chance): number[] {
  return [0, 1, 2].map(() => 1 + SPECIMEN_CV.strength * chance.normal())
}

export function cubeLoads(strengthMPa: number, factors: readonly number[]): number[] {
  return factors.map((factor) => strengthMPa * KILONEWTON_A_MPA * factor)
}

/** Three readings under the marks of their age. */
export function specimens(age: Age, readings: readonly string[]): string {
  return flowMapping(Object.fromEntries(MARKS[age].map((mark, index) => [mark, readings[index]])))
}

/** Resistances of three cubes of a true resistivity, end contact included. */
export function resistances(ohmMetre: number, chance: Chance): string[] {
  return MARKS[28].map(() => {
    const cube = (ohmMetre / SIDE_METRE) * (1 + SPECIMEN_CV.resistivity * chance.normal())
    return `${Math.round(cube + END_CONTACT_OHM)} ohm`
  })
}
