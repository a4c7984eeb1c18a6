/** Points of a drawing that a script reads out one by one: where each lies, and its words. */

export interface ReadPoint {
  /** In the drawing's own units: pixels, or thousandths of the width where it is stretched. */
  readonly x: number
  readonly y: number
  readonly words: string
}

/** "12.3,45.6 78,90", as a drawing carries it. */
export function placesText(points: readonly ReadPoint[]): string {
  return points.map(({ x, y }) => `${x},${y}`).join(' ')
}

/** A line for each point. */
export function readingsText(points: readonly ReadPoint[]): string {
  return points.map(({ words }) => words).join('\n')
}
