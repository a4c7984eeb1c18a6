/** Water requirement. */

/**
 * Water of the test mortar at the control's flow, as per cent of the control's water.
 * @param testGram,controlGram mixing water, g; the control's above zero
 * @returns per cent, unrounded
 * Source: ASTM C311, 100 Y/242 with the control's 242 mL (from memory); here the control batch's own water.
 */
export function waterRequirement(testGram: number, controlGram: number): number {
  // ASTM C311: 100 Y/242, with the control's own water for 242 (from memory).
  return (100 * testGram) / controlGram
}
