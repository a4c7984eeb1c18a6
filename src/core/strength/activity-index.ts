/** Strength activity index. */

/**
 * Test mortar's mean strength as per cent of the control mortar's, same condition and age.
 * @param testMPa,controlMPa mean strengths, MPa; the control's above zero
 * @returns per cent, unrounded
 * Source: ASTM C311, strength activity index, 100 A/B (from memory).
 */
export function activityIndex(testMPa: number, controlMPa: number): number {
  // ASTM C311: 100 A/B (from memory).
  return (100 * testMPa) / controlMPa
}
