/** Finds a result in a chart: pure, so that it is tested without a page. */

/** Middle of a result's mark, in the drawing's own units. */
export type Middle = readonly [x: number, y: number]

/** @param text "12.3,45.6 78,90" as the drawing carries it */
export function placesOf(text: string): Middle[] {
  return text
    .split(' ')
    .filter((pair) => pair !== '')
    .map((pair) => {
      const [x = 0, y = 0] = pair.split(',').map(Number)
      return [x, y]
    })
}

/**
 * Index of the place nearest to a point, the first of several; -1 without places.
 * @param y without it, only the way across counts, as on a line over time
 */
export function nearestPlace(places: readonly Middle[], x: number, y?: number): number {
  let best = -1
  let least = Number.POSITIVE_INFINITY
  for (const [index, place] of places.entries()) {
    const distance = Math.hypot(place[0] - x, y === undefined ? 0 : place[1] - y)
    if (least <= distance) continue
    best = index
    least = distance
  }
  return best
}

/**
 * The place a key leads to, kept within the series; an arrow starts at the newest. Null for any other key.
 */
export function steppedIndex(key: string, chosen: number, count: number): number | null {
  const last = count - 1
  if (key === 'Home') return 0
  if (key === 'End') return last
  if (key !== 'ArrowRight' && key !== 'ArrowLeft') return null
  if (chosen < 0) return last
  return Math.min(last, Math.max(0, chosen + (key === 'ArrowRight' ? 1 : -1)))
}
