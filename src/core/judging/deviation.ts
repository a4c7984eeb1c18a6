/** How far a result stands from its reference: the mean of the results before it, or a declared value. */
import { type Bounds, boundsOfQuotient, boundsOfSum, type Known } from '../result/bounds.ts'
import type { PrecedingResult } from '../result/result.ts'
import { mean } from '../statistics/descriptive.ts'

/**
 * Default rounding step of a uniformity clause in per cent or percentage points. Own choice, stated with the
 * clause; no source.
 */
export const UNIFORMITY_RESOLUTION = 0.1

/**
 * Mean of preceding results.
 * @returns in their stored unit, unrounded; null without any
 * Source: ASTM C618-12a, table 1, uniformity requirements (the ten preceding tests, or all of them if fewer),
 * read second-hand.
 */
export function meanOfPreceding(preceding: readonly PrecedingResult[]): number | null {
  if (preceding.length === 0) return null
  // ASTM C618-12a, table 1, read second-hand.
  return mean(preceding.map((result) => result.value))
}

/**
 * Deviation of a value from a reference.
 * @param value,reference in the stored unit
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

/**
 * What the mean of preceding results may be.
 * @param preceding at least one
 * @returns undefined where each of them is known
 */
export function boundsOfMean(preceding: readonly PrecedingResult[]): Bounds | undefined {
  return boundsOfSum(preceding.map((of) => ({ factor: 1 / preceding.length, of })))
}

/**
 * What the deviation of a value from a reference may be.
 * @param value,reference in the stored unit
 * @param measure as of `deviationFrom`
 * @returns undefined where both are known; no bound on a side where the reference may be nothing
 */
export function boundsOfDeviation(
  value: Known,
  reference: Known,
  measure: 'relative' | 'points',
): Bounds | undefined {
  if (measure === 'points')
    return boundsOfSum([
      { factor: 1, of: value },
      { factor: -1, of: reference },
    ])
  // 100 (v − r) / r = 100 v / r − 100.
  const quotient = boundsOfQuotient(value, reference)
  return quotient && boundsOfSum([{ factor: 100, of: { value: 0, bounds: quotient } }], -100)
}
