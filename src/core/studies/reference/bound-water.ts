/** Bound water of a dried paste, from the masses of its crucible. */
import { mean } from '../../statistics/descriptive.ts'
import type { ReferenceFault } from './reference-fault.ts'

/** One determination, g: crucible empty, with dried paste, and with the paste after ignition. */
export interface CrucibleMasses {
  readonly crucibleG: number
  readonly driedG: number
  readonly ignitedG: number
}

export interface BoundWater {
  readonly value: number
  /** g/100 g, of each determination. */
  readonly each: readonly number[]
}

/**
 * Mean of the determinations.
 * @param crucibles one or more
 * @returns g of water per 100 g of dried paste; a fault where masses are in the wrong order
 * Note: all that leaves between drying and ignition counts as water, carbon dioxide among it where the ignition is hot enough.
 * Source: ASTM C1897 method B in outline, dried at 105 °C or 40 °C, ignited at 350 °C (from memory).
 */
export function boundWater(crucibles: readonly CrucibleMasses[]): BoundWater | ReferenceFault {
  const place = crucibles.findIndex(({ crucibleG, ignitedG }) => ignitedG <= crucibleG)
  if (0 <= place) return { fault: 'crucible-order', place, wrong: 'crucible' }
  const gained = crucibles.findIndex(({ driedG, ignitedG }) => driedG < ignitedG)
  if (0 <= gained) return { fault: 'crucible-order', place: gained, wrong: 'ignited' }
  // 100 (m_dried − m_ignited) / (m_dried − m_crucible).
  const each = crucibles.map(
    ({ crucibleG, driedG, ignitedG }) => (100 * (driedG - ignitedG)) / (driedG - crucibleG),
  )
  return { value: mean(each), each }
}
