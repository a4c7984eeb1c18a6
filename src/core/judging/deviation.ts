/** How far a result stands from its reference: the mean of the results before it, or a declared value. */
import type { PrecedingResult } from '../result/result.ts'

/**
 * Default rounding step of a uniformity clause in per cent or percentage points. Own default, stated with the
 * clause; no source.
 */
export const UNIFORMITY_RESOLUTION = 0.1

/**
 * Unrounded mean of preceding results; null without any.
 * Source: ASTM C618-12a, uniformity requirements: the ten preceding tests, or all preceding tests if fewer.
 */
export function meanOfPreceding(preceding: readonly PrecedingResult[]): number | null {
  if (preceding.length === 0) return null
  return preceding.reduce((sum, result) => sum + result.value, 0) / preceding.length
}

/**
 * Deviation of a value from a reference.
 * @param value and `reference` in the stored unit
 * @param measure `relative`: per cent of the reference; `points`: plain difference in the stored unit
 * @returns signed and unrounded; null where a relative deviation has no meaning, that is from a reference of
 * zero
 */
export function deviationFrom(
  value: number,
  reference: number,
  measure: 'relative' | 'points',
): number | null {
  if (measure === 'points') return value - reference
  return reference === 0 ? null : (100 * (value - reference)) / reference
}
