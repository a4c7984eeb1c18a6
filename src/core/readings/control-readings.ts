/** The readings of a control batch, judged once for all lots that are held against it. */
import {
  type ReadResistivity,
  type ReadStrength,
  readResistivities,
  readStrengths,
  taken,
} from './control-results.ts'
import type { ControlMortar, MortarCondition } from '../mortar/mortar.ts'

export interface ControlReadings {
  readonly strengths: readonly ReadStrength[]
  readonly resistivities: readonly ReadResistivity[]
}
interface Kept extends ControlReadings {
  readonly condition: MortarCondition
  readonly asOf: string
}

/** The last answer for each batch: it depends on the record alone, so it goes when the record goes. */
const kept = new WeakMap<ControlMortar, Kept>()

/**
 * @param condition of the test mortar
 * @param asOf calendar date; readings taken later are left out
 * Note: dozens of lots share a batch, and judging its readings anew for each would be half of all the
 * computing.
 */
export function controlReadings(
  control: ControlMortar,
  condition: MortarCondition,
  asOf: string,
): ControlReadings {
  const before = kept.get(control)
  if (before !== undefined && before.condition === condition && before.asOf === asOf) return before
  const readings = {
    condition,
    asOf,
    strengths: readStrengths(taken(control.strength, asOf), control.cast, condition),
    resistivities: readResistivities(taken(control.resistivity, asOf), control.cast, condition),
  }
  kept.set(control, readings)
  return readings
}
