/** The cells of a table with the place of each, line by line: a table is read as its writer sees it. */
import type { FileReport } from '../diagnostics/report.ts'
import { unseenInLine } from '../yaml/unseen-characters.ts'

export interface Cell {
  /** Without quotes and outer blanks. */
  readonly text: string
  /** Where it begins, from 1. */
  readonly column: number
}

export interface TableRow {
  readonly line: number
  readonly cells: readonly Cell[]
}

/** No heading, code or number is as long. */
const LONGEST_CELL = 200

/**
 * Rows of a table that are not empty, the heading among them.
 * @param text of a CSV file; a byte order mark and either end of line are no part of its cells
 * @param report takes what cannot be read; such a line gives no row
 */
export function* tableRows(text: string, report: FileReport): Generator<TableRow> {
  let [line, start] = [0, 0]
  while (start < text.length) {
    const found = text.indexOf('\n', start)
    const end = found < 0 ? text.length : found
    line += 1
    const mark = line === 1 && text.startsWith('\uFEFF') ? 1 : 0
    const written = text.slice(start + mark, end).replace(/\r$/, '')
    start = end + 1
    if (/^[\s,]*$/.test(written)) continue
    const cells = cellsOf(written, mark + 1, (column, ...fault) => report.atPosition(line, column, ...fault))
    if (cells !== null) yield { line, cells }
  }
}

/**
 * The first row, which heads the others.
 * @param each what a row of the table stands for
 * @returns undefined for a table without one, which is told
 */
export function headingRow(
  rows: Generator<TableRow>,
  each: 'specimen' | 'reading',
  report: FileReport,
): TableRow | undefined {
  const heading: TableRow | undefined = rows.next().value
  if (heading === undefined && report.count() === 0)
    report.atPosition(1, 1, 'yaml-empty', 'the table is empty', `write a heading, and a row for each ${each}`)
  return heading
}

type Tell = (column: number, code: 'schema' | 'text-character', message: string, mend: string) => void

/** Cells of one line; null where it cannot be read, which is told. */
function cellsOf(line: string, firstColumn: number, tell: Tell): Cell[] | null {
  const unseen = unseenInLine(line.replaceAll('\t', ' '))
  if (unseen !== undefined) {
    tell(
      firstColumn + unseen.index,
      'text-character',
      `the line holds the invisible character ${unseen.name}`,
      unseen.name === 'U+000D'
        ? 'save the table with ordinary line ends (LF or CRLF)'
        : 'take it out, or write the cell anew by hand',
    )
    return null
  }
  const cells: Cell[] = []
  let place = 0
  for (;;) {
    const cell = cellAt(line, place)
    const column = firstColumn + place
    if ('fault' in cell) {
      tell(column, 'schema', ...cell.fault)
      return null
    }
    if (LONGEST_CELL < cell.text.length) {
      tell(column, 'schema', `this cell has ${cell.text.length} characters`, `write ${LONGEST_CELL} at most`)
      return null
    }
    cells.push({ text: cell.text.trim(), column })
    if (cell.end === line.length) return cells
    place = cell.end + 1
  }
}

type Fault = readonly [message: string, mend: string]

/** The cell that begins at a place, and where the comma or the end of the line is that ends it. */
function cellAt(line: string, place: number): { text: string; end: number } | { readonly fault: Fault } {
  if (line[place] !== '"') {
    const comma = line.indexOf(',', place)
    const end = comma < 0 ? line.length : comma
    return { text: line.slice(place, end), end }
  }
  let close = line.indexOf('"', place + 1)
  // A doubled quote stands for one.
  while (0 <= close && line[close + 1] === '"') close = line.indexOf('"', close + 2)
  if (close < 0)
    return {
      fault: [
        'a quote opens this cell and does not close on the same line',
        'close the quote, and write each row on one line',
      ],
    }
  const end = close + 1
  if (end < line.length && line[end] !== ',')
    return {
      fault: ['text follows the closing quote of this cell', 'put a comma after the quote, or double it'],
    }
  return { text: line.slice(place + 1, close).replaceAll('""', '"'), end }
}
