/** The indices that are ratios of a test mortar's mean to its control's, and what they are the ratio of. */
import type { PropertyKey } from './properties.ts'

/** By index: the property measured on both mortars. */
export const RATIO_OF: Partial<Record<PropertyKey, PropertyKey>> = {
  'strength-activity-index': 'compressive-strength',
  'resistivity-index': 'bulk-resistivity',
}

/**
 * Properties of a mortar that mean something only at a condition and an age: the indices, and what they are the
 * ratio of.
 */
export function isMortarResult(key: PropertyKey): boolean {
  return key in RATIO_OF || key in INDEX_OF
}

/**
 * Properties that a laboratory may report finished, as a figure without the readings behind it: those of a mortar,
 * the water that it needs among them.
 */
export function isFinishable(key: PropertyKey): boolean {
  return isMortarResult(key) || key === 'water-requirement'
}

/** By measured property: the index. */
export const INDEX_OF: Partial<Record<PropertyKey, PropertyKey>> = Object.fromEntries(
  Object.entries(RATIO_OF).map(([index, measured]) => [measured, index]),
)
