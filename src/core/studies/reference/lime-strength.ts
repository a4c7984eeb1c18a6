/** Strength of a mortar of lime and material, without cement. */
import { mean } from '../../statistics/descriptive.ts'
import { strengthMPa } from '../../strength/compressive-strength.ts'

export interface LimeStrength {
  readonly value: number
  /** MPa, of each specimen. */
  readonly each: readonly number[]
}

/**
 * Mean strength.
 * @param loadsKN one or more
 * @param areaMm2 loaded face, above zero
 * @returns MPa, with each specimen's
 * Source: ASTM C593 and the lime reactivity tests of its kind, load over area (from memory).
 */
export function limeStrength(loadsKN: readonly number[], areaMm2: number): LimeStrength {
  const each = loadsKN.map((load) => strengthMPa(load, areaMm2))
  return { value: mean(each), each }
}
