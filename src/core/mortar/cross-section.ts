/** Loaded area and electrode distance of a specimen, measured where it was measured, else nominal. */
import type { SpecimenShape } from './mortar.ts'
import type { Quantity } from '../measure/units.ts'

interface Sizes {
  readonly side?: Quantity
  readonly 'other-side'?: Quantity
  readonly length?: Quantity
  readonly diameter?: Quantity
  readonly area?: Quantity
}

/**
 * Area of the loaded face or of the section between the electrodes.
 * @param nominal shape of the condition; undefined where it has none
 * @param measured sizes of the specimen, which go before the nominal ones
 * @returns mm²; null where no size is known
 */
export function crossSectionMm2(nominal: SpecimenShape | undefined, measured: Sizes = {}): number | null {
  if (measured.area !== undefined) return measured.area.value
  const diameter = (measured.diameter ?? nominal?.diameter)?.value
  if (nominal?.shape === 'cylinder' || (nominal === undefined && diameter !== undefined))
    // π d²/4.
    return diameter === undefined ? null : (Math.PI * diameter * diameter) / 4
  const side = (measured.side ?? nominal?.side)?.value
  if (side === undefined) return null
  return side * (measured['other-side']?.value ?? side)
}

/**
 * Distance of the electrodes: a cube's edge, a prism's or cylinder's length.
 * @param nominal shape of the condition; undefined where it has none
 * @param measured sizes of the specimen, which go before the nominal ones
 * @returns mm; null where no length is known
 */
export function electrodeDistanceMm(nominal: SpecimenShape | undefined, measured: Sizes = {}): number | null {
  const length = (measured.length ?? nominal?.length)?.value
  if (length !== undefined) return length
  return nominal?.shape === 'cube' ? ((measured.side ?? nominal.side)?.value ?? null) : null
}
