/**
 * The rows of a table as values of fields, each with its place in the file. Every row that is not blank is read, left out
 * by the map's own word, or told.
 */
import { type CellForm, cellForm, shownText } from './cell-value.ts'
import { cellValues, type FieldValue, patternValues } from './cell-values.ts'
import { columnAt } from './column-at.ts'
import { fieldOf } from './fields.ts'
import type { CellPlace, CellValue, Sheet } from './grid.ts'
import { meansSheet, reportHidden } from './hidden-parts.ts'
import type { TellFault } from './import-fault.ts'
import { type Column, columnOf, IGNORED, type ImportMap, type MappedTable } from './import-map.ts'
import { headingText, isWithin, rowKey, type SheetView, type ViewRow, viewOf } from './sheet-view.ts'
import { constantsOf } from './table-constants.ts'
import { unitInHeading } from './unit-in-heading.ts'
import { reportSheets, reportUnplaced, reportUnread } from './unread-parts.ts'

export interface ReadRow {
  readonly table: MappedTable
  readonly place: CellPlace
  /** The row's own values before those of the table as a whole. */
  readonly values: readonly FieldValue[]
  /** One of its cells was refused: what is left of it may say what it belongs to. */
  readonly refused?: true
}

export interface ReadTables {
  /** Those that were read whole. */
  readonly rows: readonly ReadRow[]
  readonly refused: readonly ReadRow[]
  /** Rows that the map leaves out, and headings that stand again. */
  readonly leftOut: number
}

/** The rows of all tables of a map. */
export function readTables(sheets: readonly Sheet[], map: ImportMap, tell: TellFault): ReadTables {
  const readings = sheets.map((sheet) => ({
    sheet,
    tables: map.tables.filter((table) => reads(table, sheet, sheets)),
  }))
  reportSheets(readings, map, tell)
  const rows: ReadRow[] = []
  let leftOut = 0
  for (const { sheet, tables } of readings) {
    const views = apart(tables).map((table) => ({ table, view: viewOf(sheet, table) }))
    const passed = new Map<string, 'read' | 'left'>()
    const read = views.map((one) => ({ ...one, rows: rowsOf({ sheet, map, ...one, passed }, tell) }))
    rows.push(...read.flatMap((one) => one.rows))
    reportHidden(sheet, read.map(rowNumbers), tell)
    if (0 < views.length) reportUnplaced(views, tell)
    leftOut += [...passed.values()].filter((how) => how === 'left').length
    reportUnread(views, passed, tell)
  }
  return {
    rows: rows.filter(({ refused }) => refused !== true),
    refused: rows.filter(({ refused }) => refused === true),
    leftOut,
  }
}

function reads({ sheet: named }: MappedTable, sheet: Sheet, sheets: readonly Sheet[]): boolean {
  return named === undefined
    ? sheet === sheets.find(({ hidden }) => hidden !== true)
    : meansSheet(named, sheet)
}

function rowNumbers<View>(read: View & { readonly rows: readonly ReadRow[] } & Pick<TableToRead, 'view'>) {
  const { onSide } = read.view
  return { ...read, rows: read.rows.map(({ place }) => (onSide ? (place.column ?? 0) + 1 : place.row)) }
}

/** Of tables that stand one under the other each ends above the next one's headings, where the map does not say. */
function apart(tables: readonly MappedTable[]): MappedTable[] {
  const startOf = ({ headings }: MappedTable) => Math.min(...[headings ?? 1].flat())
  return tables.map((table) => {
    const next = tables
      .filter((other) => other['records-in'] === table['records-in'] && startOf(table) < startOf(other))
      .map(startOf)
    return table.rows?.to !== undefined || next.length === 0
      ? table
      : { ...table, rows: { ...table.rows, to: Math.min(...next) - 1 } }
  })
}

interface TableToRead {
  readonly sheet: Sheet
  readonly map: ImportMap
  readonly table: MappedTable
  readonly view: SheetView
  /** What became of a row, by its number. */
  readonly passed: Map<string, 'read' | 'left'>
}

/** A column of the sheet that gives something. */
interface PlacedColumn {
  readonly at: number
  readonly column: Column
  readonly form: CellForm
}

function rowsOf(reading: TableToRead, tell: TellFault): ReadRow[] {
  const { table, view, sheet, passed } = reading
  const columns = placedColumns(reading, tell)
  const only = filters(table.only, view, tell)
  const except = filters(table.except, view, tell)
  const constants = constantsOf(reading, tell)
  if (columns === null || only === null || except === null || constants === null) return []
  const filled = new Map<number, CellValue>()
  let block: readonly FieldValue[] = []
  const rows: ReadRow[] = []
  for (const row of view.rows) {
    if (row.row <= view.headingRow || !isWithin(row.row, table.rows)) continue
    const key = rowKey(view, row.row)
    const title = titleValues(row, reading)
    if (title !== null) {
      block = title
      passed.set(key, 'read')
    } else if (repeatsHeadings(row, view) || except.some((filter) => says(row, filter))) {
      if (!passed.has(key)) passed.set(key, 'left')
    } else if (only.every((filter) => says(row, filter))) {
      passed.set(key, 'read')
      const { values, sound } = rowValues(row, columns, filled, reading, tell)
      const read = {
        table,
        place: view.placeOf(row.row, null),
        values: [...values, ...block, ...constants],
      }
      rows.push(isWhole(row, sheet, view, tell) && sound ? read : { ...read, refused: true })
    }
  }
  return rows
}

function repeatsHeadings({ cells }: ViewRow, { headings }: SheetView): boolean {
  return (
    1 < cells.size &&
    [...cells].every(([column, cell]) => headings.get(column) === headingText(shownText(cell)))
  )
}

/** A row of a file of text has as many cells as its headings, or its values stand under others. */
function isWhole(row: ViewRow, { rows }: Sheet, view: SheetView, tell: TellFault): boolean {
  const width = rows.find((one) => one.row === view.headingRow)?.width
  if (row.width === undefined || width === undefined || row.width === width) return true
  const last = Math.max(...row.cells.keys())
  if (width < row.width && last < width) return true
  tell({
    code: 'import-row',
    severity: 'error',
    place: view.placeOf(row.row, null),
    message: `the row has ${row.width} cells, and the headings have ${width}`,
    mend: 'give it a cell for each column, blank where there is no value; put a cell in quotes that holds the separator',
  })
  return false
}

/** The columns that give something, by the map; null where one of them cannot be told, which is told. */
function placedColumns({ table, view, map }: TableToRead, tell: TellFault): PlacedColumn[] | null {
  const placed: PlacedColumn[] = []
  let sound = true
  for (const [heading, written] of Object.entries(table.columns)) {
    const column = columnOf(written)
    const at = columnAt(heading, view)
    if (typeof at === 'object') {
      sound = false
      tell({ code: 'import-heading', severity: 'error', place: view.placeOf(view.headingRow, null), ...at })
    } else if (column.to !== IGNORED) {
      const reads = fieldOf(table.holds, column.to)?.reads
      const kind = reads?.as === 'quantity' ? reads.kind : undefined
      const unit = column.unit ?? unitInHeading(view.headings.get(at) ?? '', kind)
      const form = cellForm([map, table, column], unit === undefined ? column : { ...column, unit })
      placed.push({ at, column, form })
    }
  }
  return sound ? placed : null
}

interface Filter {
  readonly at: number
  readonly texts: readonly string[]
}

function filters(written: MappedTable['only'], view: SheetView, tell: TellFault): Filter[] | null {
  const found = Object.entries(written ?? {}).map(([heading, texts]) => {
    const at = columnAt(heading, view)
    if (typeof at === 'number') return { at, texts: [texts].flat() }
    tell({ code: 'import-heading', severity: 'error', place: view.placeOf(view.headingRow, null), ...at })
    return null
  })
  return found.includes(null) ? null : (found as Filter[])
}

function says({ cells }: ViewRow, { at, texts }: Filter): boolean {
  const cell = cells.get(at)
  return texts.includes(cell === undefined ? '' : shownText(cell))
}

/** The values of a row that begins a block; null for any other row. */
function titleValues(row: ViewRow, { table, view }: TableToRead): FieldValue[] | null {
  const [only] = row.cells
  if (table.block === undefined || row.cells.size !== 1 || only === undefined) return null
  return patternValues(shownText(only[1]), table.block, { table, place: view.placeOf(row.row, only[0]) })
}

/** The values of a row, not sound where one of its cells is refused. */
function rowValues(
  row: ViewRow,
  columns: readonly PlacedColumn[],
  filled: Map<number, CellValue>,
  { table, view }: TableToRead,
  tell: TellFault,
): { readonly values: readonly FieldValue[]; readonly sound: boolean } {
  const values: FieldValue[] = []
  let sound = true
  for (const { at, column, form } of columns) {
    const cell = row.cells.get(at) ?? (column.fill === 'down' ? filled.get(at) : undefined)
    if (cell === undefined) continue
    if (column.fill === 'down') filled.set(at, cell)
    const found = cellValues(cell, { column, form, table, place: view.placeOf(row.row, at) }, tell)
    if (found === null) sound = false
    else values.push(...found)
  }
  return { values, sound }
}
