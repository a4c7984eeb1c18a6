/** Resistivity index (relative bulk resistivity). */

/**
 * Test mortar's mean bulk resistivity as per cent of the control mortar's, same condition and age.
 * @param testOhmMetre,controlOhmMetre mean bulk resistivities, ohm m; the control's above zero
 * @returns per cent, unrounded
 * Source: own definition, 100 A/B as for the strength activity index.
 */
export function resistivityIndex(testOhmMetre: number, controlOhmMetre: number): number {
  // Definition: 100 A/B.
  return (100 * testOhmMetre) / controlOhmMetre
}
