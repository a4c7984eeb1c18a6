/** Labels of a chart: how much room they need, and places where none covers another. */
import { rounded } from './plot.ts'

/** Width that a letter of a label needs, about, in a 12 px face. */
const LETTER = 6.2

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

/** About how wide a text is, in pixels. */
export function labelWidth(text: string): number {
  return text.length * LETTER
}

/** A label wider than its room is cut; the legend or the page tells it whole. */
export function shortened(text: string, room: number): string {
  const letters = Math.floor(room / LETTER)
  return text.length <= letters ? text : `${text.slice(0, letters - 1).trimEnd()}…`
}

/** Lines of whole words, broken where a text is wider than its room. */
export function broken(text: string, room: number): string[] {
  const lines: string[] = []
  for (const word of text.split(' ')) {
    const joined = `${lines.at(-1) ?? ''} ${word}`
    if (0 < lines.length && labelWidth(joined) <= room) lines[lines.length - 1] = joined
    else lines.push(word)
  }
  return lines
}

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
    placed.set(wish, { text: wish.text, x: rounded(begin + wish.width / 2), anchor: 'middle', row })
  }
  return wishes.map((wish) => placed.get(wish) as PlacedLabel)
}

/** Rows that placed labels take. */
export function rowsOf(labels: readonly PlacedLabel[]): number {
  return labels.length === 0 ? 0 : 1 + Math.max(...labels.map((label) => label.row))
}
