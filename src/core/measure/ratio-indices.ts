/** The indices that are ratios of a test mortar's mean to its control's, and what they are the ratio of. */
import type { PropertyKey } from './properties.ts'

/** By index: the property measured on both mortars. */
export const RATIO_OF: Partial<Record<PropertyKey, PropertyKey>> = {
  'strength-activity-index': 'compressive-strength',
  'resistivity-index': 'bulk-resistivity',
}

/** By measured property: the index. */
export const INDEX_OF: Partial<Record<PropertyKey, PropertyKey>> = Object.fromEntries(
  Object.entries(RATIO_OF).map(([index, measured]) => [measured, index]),
)
