/** Offsets into a text as lines and columns. */
import { bisectRight } from 'd3'

/** Offsets at which the lines of a text begin. */
export function lineStarts(text: string): number[] {
  return [0, ...[...text.matchAll(/\n/g)].map(({ index }) => index + 1)]
}

/**
 * Line and column of an offset, both from 1, in UTF-16 units.
 * @param starts of the text's lines, as `lineStarts` gives them
 */
export function lineAndColumn(starts: readonly number[], offset: number): { line: number; column: number } {
  const line = bisectRight(starts, offset)
  return { line, column: offset - (starts[line - 1] ?? 0) + 1 }
}
