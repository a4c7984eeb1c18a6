/** Places labels over a chart so that none covers another. */

export interface LabelWish {
  readonly text: string
  readonly x: number
  readonly width: number
}
export interface PlacedLabel {
  readonly text: string
  readonly x: number
  readonly anchor: 'start' | 'middle' | 'end'
  readonly row: number
}

/** Gap between two labels of one row. */
const GAP = 8

/**
 * Labels in the lowest row that is free at their place, kept inside the bounds; in the order of the wishes.
 */
export function placeLabels(
  wishes: readonly LabelWish[],
  bounds: { left: number; right: number },
): PlacedLabel[] {
  const ends: number[] = []
  const placed = new Map<LabelWish, PlacedLabel>()
  for (const wish of [...wishes].sort((a, b) => a.x - b.x)) {
    const begin = Math.min(Math.max(bounds.left, wish.x - wish.width / 2), bounds.right - wish.width)
    const free = ends.findIndex((end) => end + GAP <= begin)
    const row = free < 0 ? ends.length : free
    ends[row] = begin + wish.width
    placed.set(wish, {
      text: wish.text,
      x: Math.round((begin + wish.width / 2) * 100) / 100,
      anchor: 'middle',
      row,
    })
  }
  return wishes.map((wish) => placed.get(wish) as PlacedLabel)
}
