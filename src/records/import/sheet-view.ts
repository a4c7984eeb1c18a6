/** A sheet as a table whose records are rows, though it may stand on its side, with headings of one row or several. */
import { type CellPlace, type CellValue, columnLetters, columnOfLetters, type Sheet } from './grid.ts'
import { shownText } from './cell-value.ts'
import type { MappedTable } from './import-map.ts'

export interface ViewRow {
  /** From 1; a column's number where the table stands on its side. */
  readonly row: number
  readonly cells: ReadonlyMap<number, CellValue>
  readonly width?: number
}

export interface SheetView {
  /** Records stand in columns. */
  readonly onSide: boolean
  readonly rows: readonly ViewRow[]
  readonly placeOf: (row: number, column: number | null) => CellPlace
  /** Headings by column, those of several rows joined; columns without one are left out. */
  readonly headings: ReadonlyMap<number, string>
  /** The last row of the headings. */
  readonly headingRow: number
  /** The column that a name after @ means: a letter, or a row's number in a table on its side. */
  readonly columnNamed: (name: string) => number | null
  readonly columnName: (column: number) => string
}

/** Blanks, line breaks and compatible signs (₂, ２) are written in one way in headings. */
export function headingText(text: string): string {
  return text
    .normalize('NFKC')
    .replace(/[\s\u200b]+/g, ' ')
    .trim()
}

/** How headings of several rows are joined. */
export const JOINT = ' / '

export function viewOf(
  sheet: Sheet,
  table: Pick<MappedTable, 'headings' | 'fill-headings' | 'records-in'>,
): SheetView {
  const onSide = table['records-in'] === 'columns'
  const rows = onSide ? turned(sheet) : sheet.rows
  const merged = onSide ? sheet.merged.map(turnedRange) : sheet.merged
  const bounds = [table.headings ?? 1].flat()
  const [from, to] = [Math.min(...bounds), Math.max(...bounds)]
  const columnName = (column: number) => (onSide ? String(column + 1) : columnLetters(column))
  return {
    onSide,
    rows,
    placeOf: (row, column) =>
      onSide
        ? { sheet: sheet.name, row: (column ?? 0) + 1, column: row - 1 }
        : { sheet: sheet.name, row, column },
    headings: headingsOf(rows, merged, { from, to, fill: table['fill-headings'] === 'yes' }),
    headingRow: to,
    columnNamed: (name) => {
      if (!onSide) return columnOfLetters(name)
      return /^[1-9]\d{0,6}$/.test(name) ? Number(name) - 1 : null
    },
    columnName,
  }
}

function turned(sheet: Sheet): ViewRow[] {
  const rows = new Map<number, Map<number, CellValue>>()
  for (const { row, cells } of sheet.rows)
    for (const [column, cell] of cells) {
      const own = rows.get(column + 1) ?? new Map<number, CellValue>()
      rows.set(column + 1, own)
      own.set(row - 1, cell)
    }
  return [...rows].sort(([a], [b]) => a - b).map(([row, cells]) => ({ row, cells }))
}

type Range = Sheet['merged'][number]

function turnedRange({ rows, columns }: Range): Range {
  return { rows: [columns[0] + 1, columns[1] + 1], columns: [rows[0] - 1, rows[1] - 1] }
}

interface HeadingRows {
  readonly from: number
  readonly to: number
  readonly fill: boolean
}

/** Merged cells of headings wider than this are a slip of the mouse over whole rows. */
const WIDEST_HEADING = 500

function headingsOf(
  rows: readonly ViewRow[],
  merged: readonly Range[],
  { from, to, fill }: HeadingRows,
): Map<number, string> {
  const parts = new Map<number, string[]>()
  const own = rows.filter(({ row }) => from <= row && row <= to)
  const last = Math.max(0, ...own.flatMap(({ cells }) => [...cells.keys()]))
  for (let row = from; row <= to; row += 1) {
    const texts = new Map(
      [...(own.find((each) => each.row === row)?.cells ?? [])].map(([column, cell]) => [
        column,
        shownText(cell),
      ]),
    )
    for (const range of merged) spread(range, row, rows, texts)
    let left: string | undefined
    for (let column = 0; column <= last; column += 1) {
      left = texts.get(column) ?? (fill && row < to ? left : undefined)
      const text = left === undefined ? '' : headingText(left)
      const before = parts.get(column) ?? []
      if (text !== '' && before.at(-1) !== text) parts.set(column, [...before, text])
    }
  }
  return new Map([...parts].map(([column, texts]) => [column, texts.join(JOINT)]))
}

/** A merged heading counts for each of its columns and rows. */
function spread(
  { rows, columns }: Range,
  row: number,
  all: readonly ViewRow[],
  texts: Map<number, string>,
): void {
  if (row < rows[0] || rows[1] < row || WIDEST_HEADING < columns[1] - columns[0]) return
  const cell = all.find((each) => each.row === rows[0])?.cells.get(columns[0])
  if (cell === undefined) return
  for (let column = columns[0]; column <= columns[1]; column += 1)
    if (!texts.has(column)) texts.set(column, shownText(cell))
}

/** A row's number, told apart from that of a table on its side. */
export function rowKey({ onSide }: SheetView, row: number): string {
  return `${onSide ? 'column' : 'row'} ${row}`
}

/** Whether a row lies within the first and last that the map names. */
export function isWithin(row: number, bounds: MappedTable['rows']): boolean {
  return (bounds?.from ?? 0) <= row && row <= (bounds?.to ?? Number.POSITIVE_INFINITY)
}
