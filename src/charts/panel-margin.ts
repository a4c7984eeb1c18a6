/** Labels in the margin beside a panel: each as near to its line as the others allow. */
import { rounded } from './plot.ts'

export interface MarginWish {
  /** Height of its line in pixels; infinite for what lies off the scale. */
  readonly y: number
  readonly text: string
  readonly kind: 'limit' | 'last' | 'other'
}

export interface MarginLabel extends MarginWish {
  /** Middle of the letters. */
  readonly y: number
}

/** Distance between two labels, and of the outermost from the edges. */
const GAP = 14
const EDGE = 7

/** In order from the top; those that would cover a neighbour are pushed apart, down first and then up again. */
export function marginLabels(wishes: readonly MarginWish[], height: number): MarginLabel[] {
  const placed = [...wishes]
    .sort((a, b) => a.y - b.y)
    .map((wish) => ({ ...wish, y: Math.min(Math.max(wish.y, EDGE), height - EDGE) }))
  for (let place = 1; place < placed.length; place++)
    raise(placed, place, Math.max(placed[place]?.y ?? 0, (placed[place - 1]?.y ?? 0) + GAP))
  let floor = height - EDGE
  for (let place = placed.length - 1; 0 <= place; place--) {
    raise(placed, place, Math.min(placed[place]?.y ?? 0, floor))
    floor = (placed[place]?.y ?? 0) - GAP
  }
  return placed.map((label) => ({ ...label, y: rounded(label.y, 1) }))
}

function raise(labels: { y: number }[], place: number, y: number): void {
  const label = labels[place]
  if (label !== undefined) label.y = y
}
