/**
 * Order of two texts by code unit, the same on every machine.
 * @param a,b any
 * @returns negative, zero, positive
 */
export function compareTexts(a: string, b: string): number {
  return a === b ? 0 : a < b ? -1 : 1
}
