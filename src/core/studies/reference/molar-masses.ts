/** Molar masses that losses and titrations are turned into calcium hydroxide with, g/mol. */

/** Source: IUPAC standard atomic weights (Ca 40.078, O 15.9994, H 1.00794, C 12.0107), summed; from memory. */
export const MOLAR_MASS = {
  calciumHydroxide: 74.093,
  water: 18.015,
  carbonDioxide: 44.009,
  lime: 56.077,
} as const
