/**
 * The rows of a table as values of fields, each with its place in the file. Every row that is not blank is read, left out
 * by the map's own word, or told. Longer than most files: each thing that a row can be is decided in one place.
 */
import { nearNames } from '../diagnostics/near-names.ts'
import { shortened } from '../schema/schema-words.ts'
import { type CellForm, cellForm, readCell, shownText } from './cell-value.ts'
import { type Field, fieldOf } from './fields.ts'
import { type CellPlace, type CellValue, columnOfLetters, type Sheet } from './grid.ts'
import type { TellFault } from './import-fault.ts'
import { type Column, columnOf, IGNORED, IN_BRACES, type ImportMap, type MappedTable } from './import-map.ts'
import { headingText, JOINT, type SheetView, type ViewRow, viewOf } from './sheet-view.ts'

/** What a column's values belong to beside the row. */
export type Scope = Pick<
  Column,
  'age' | 'condition' | 'specimen' | 'for' | 'basis' | 'method' | 'standard-uncertainty'
>

export interface FieldValue {
  readonly name: string
  readonly field: Field
  /** As a record writes it. */
  readonly written: string
  /** null for what the map says of all rows. */
  readonly place: CellPlace | null
  readonly scope: Scope
}

export interface ReadRow {
  readonly table: MappedTable
  readonly place: CellPlace
  /** The row's own values before those of the table as a whole. */
  readonly values: readonly FieldValue[]
}

export interface ReadTables {
  readonly rows: readonly ReadRow[]
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
    for (const one of views) rows.push(...rowsOf({ sheet, map, ...one, passed }, tell))
    if (0 < views.length) reportUnplaced(views, tell)
    leftOut += [...passed.values()].filter((how) => how === 'left').length
    reportUnread(views, passed, tell)
  }
  return { rows, leftOut }
}

function reads({ sheet: named }: MappedTable, { name }: Sheet, sheets: readonly Sheet[]): boolean {
  if (named === undefined) return name === sheets[0]?.name
  return name === null || isNamed(name, named)
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

function isNamed(name: string, pattern: string): boolean {
  return new RegExp(`^${pattern.split('*').map(literal).join('.*')}$`, 's').test(name)
}

function literal(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')
}

function reportSheets(
  readings: readonly { readonly sheet: Sheet; readonly tables: readonly MappedTable[] }[],
  map: ImportMap,
  tell: TellFault,
): void {
  const names = readings.flatMap(({ sheet: { name } }) => (name === null ? [] : [name]))
  const left = map['not-read'] ?? []
  for (const { sheet, tables } of readings)
    if (
      tables.length === 0 &&
      0 < sheet.rows.length &&
      !left.some((pattern) => isNamed(sheet.name ?? '', pattern))
    )
      tell({
        code: 'import-sheet',
        severity: 'note',
        place: null,
        message: `the map reads nothing of the sheet "${sheet.name}"`,
        mend: `write a table for it, or name it under not-read`,
      })
  for (const { sheet: named } of map.tables)
    if (named !== undefined && 0 < names.length && !names.some((name) => isNamed(name, named)))
      tell({
        code: 'import-sheet',
        severity: 'error',
        place: null,
        message: `the file has no sheet "${named}"`,
        mend: nearNames(named, names) || 'write the name of a sheet of the file',
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
      const values = rowValues(row, columns, filled, reading, tell)
      if (isWhole(row, sheet, view, tell) && values !== null)
        rows.push({ table, place: view.placeOf(row.row, null), values: [...values, ...block, ...constants] })
    }
  }
  return rows
}

function rowKey({ onSide }: SheetView, row: number): string {
  return `${onSide ? 'column' : 'row'} ${row}`
}

function isWithin(row: number, bounds: MappedTable['rows']): boolean {
  return (bounds?.from ?? 0) <= row && row <= (bounds?.to ?? Number.POSITIVE_INFINITY)
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
      const unit = column.unit ?? unitInHeading(view.headings.get(at) ?? '')
      const form = cellForm([map, table, column], unit === undefined ? column : { ...column, unit })
      placed.push({ at, column, form })
    }
  }
  return sound ? placed : null
}

interface Said {
  readonly message: string
  readonly mend: string
}

/** The column with a heading, or why it cannot be told. */
function columnAt(heading: string, view: SheetView): number | Said {
  if (heading.startsWith('@')) {
    const at = view.columnNamed(heading.slice(1))
    return (
      at ?? {
        message: `"${heading}" names no column`,
        mend: 'write @ and the letter of the column, such as @D',
      }
    )
  }
  const wanted = headingText(heading)
  const found = [...view.headings].filter(([, text]) => text === wanted).map(([column]) => column)
  const [first] = found
  if (first === undefined)
    return {
      message: `there is no heading "${shortened(wanted)}" here`,
      mend:
        nearNames(wanted, view.headings.values()) ||
        'write the heading as it stands in the sheet, and under headings the row that it stands in',
    }
  if (found.length === 1) return first
  const names = found.map((column) => `@${view.columnName(column)}`)
  return {
    message: `${found.length} columns have the heading "${shortened(wanted)}"`,
    mend: `name them in the map by ${names.join(' and ')}`,
  }
}

/** "SiO2 (%)", "Load [kN]", "Load, kN", "wt.% CaO", "age_d": what stands for the unit. */
export function unitInHeading(heading: string): string | undefined {
  const parts = heading.split(JOINT)
  return 1 < parts.length ? parts.map(unitInHeading).find((unit) => unit !== undefined) : unitInPart(heading)
}

function unitInPart(heading: string): string | undefined {
  const [, bracketed] = /[([]\s*([^()[\]]{1,20}?)\s*[)\]]\s*$/.exec(heading) ?? []
  const [, behind] = /(?:,|\bin)\s+([^\s,]{1,12}(?: [^\s,]{1,8})?)$/.exec(heading) ?? []
  const [, joined] = /_([A-Za-z%]{1,6})$/.exec(heading) ?? []
  const found = bracketed ?? behind ?? joined
  if (found !== undefined) return plainUnit(found)
  return /%|\bper ?cent\b/.test(heading) ? '%' : undefined
}

/** Ways in which headings write a unit that records write otherwise. */
function plainUnit(unit: string): string | undefined {
  const bare = unit.replace(/\^/g, '').trim()
  if (/^(?:(?:wt|m|mass)\.?[- ]?%|%|%[- ]?(?:by )?(?:wt|mass|weight|m\/m|w\/w)\.?|per ?cent\b)/i.test(bare))
    return '%'
  if (/^days?$/i.test(bare)) return 'd'
  if (/^g\/(?:cc|ml|cm3)$/i.test(bare)) return 'g/cm3'
  if (/^kΩ$|^kohm$/i.test(bare)) return 'kohm'
  if (/^[Ωohm]+s?$/i.test(bare)) return 'ohm'
  return /^[A-Za-z°µμΩ%·/ .²³0-9-]{1,20}$/.test(bare) ? bare : undefined
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

/** What holds for all rows of a table; null where one of it cannot be read, which is told. */
function constantsOf({ sheet, map, table }: TableToRead, tell: TellFault): FieldValue[] | null {
  const constants: FieldValue[] = []
  let sound = true
  const take = (values: FieldValue[] | null) => {
    if (values === null) sound = false
    else constants.push(...values)
  }
  for (const [address, written] of Object.entries(table.cells ?? {}))
    take(cellConstant({ address, column: columnOf(written) }, { sheet, map, table }, tell))
  if (table['sheet-name'] !== undefined && sheet.name !== null) {
    const values = patternValues(sheet.name, table['sheet-name'], { table, place: null })
    if (values === null)
      tell({
        code: 'import-sheet',
        severity: 'error',
        place: null,
        message: `the name of the sheet "${sheet.name}" is not made up as "${table['sheet-name']}"`,
        mend: 'correct sheet-name in the map, or name the sheet under not-read',
      })
    take(values)
  }
  for (const every of [table.every, map.every])
    for (const [name, value] of Object.entries(every ?? {})) {
      const field = fieldOf(table.holds, name)
      if (field !== undefined) constants.push({ name, field, written: String(value), place: null, scope: {} })
    }
  return sound ? constants : null
}

interface SingleCell {
  readonly address: string
  readonly column: Column
}

function cellConstant(
  { address, column }: SingleCell,
  { sheet, map, table }: Pick<TableToRead, 'sheet' | 'map' | 'table'>,
  tell: TellFault,
): FieldValue[] | null {
  const [, letters = '', number = ''] = /^([A-Z]+)(\d+)$/.exec(address) ?? []
  const [row, at] = [Number(number), columnOfLetters(letters)]
  const place = { sheet: sheet.name, row, column: at }
  const cell = sheet.rows.find((one) => one.row === row)?.cells.get(at ?? -1)
  if (cell === undefined) {
    tell({
      code: 'import-cell',
      severity: 'error',
      place,
      message: `the cell is blank; the map takes "${column.to}" from it`,
      mend: 'fill it, or correct the address under cells',
    })
    return null
  }
  return cellValues(cell, { column, form: cellForm([map, table, column], column), table, place }, tell)
}

interface CellToRead {
  readonly column: Column
  readonly form: CellForm
  readonly table: MappedTable
  readonly place: CellPlace
}

/** What a cell gives; null where it cannot be read, which is told. */
function cellValues(
  cell: CellValue,
  { column, form, table, place }: CellToRead,
  tell: TellFault,
): FieldValue[] | null {
  const refuse = (said: Said): null => {
    tell({ code: 'import-cell', severity: 'error', place, ...said })
    return null
  }
  const { to, pattern } = column
  const scope = scopeOf(column)
  if (pattern !== undefined && cell.kind !== 'fault' && !form.standsFor.has(shownText(cell))) {
    const text = shownText(cell)
    return (
      patternValues(text, pattern, { table, place, form, scope }) ??
      refuse({
        message: `found "${shortened(text)}"; a text made up as "${pattern}" was expected`,
        mend: 'correct the cell, or the pattern in the map',
      })
    )
  }
  const field = fieldOf(table.holds, to)
  if (field === undefined) return []
  const reading = readCell(cell, field.reads, form)
  if (reading === null) return []
  if ('fault' in reading) return refuse(reading.fault)
  return [{ name: to, field, written: reading.written, place, scope }]
}

const OF_SCOPE = ['age', 'condition', 'specimen', 'for', 'basis', 'method', 'standard-uncertainty'] as const

function scopeOf(column: Column): Scope {
  return Object.fromEntries(
    OF_SCOPE.flatMap((key) => (column[key] === undefined ? [] : [[key, column[key]]])),
  )
}

interface PatternContext {
  readonly table: MappedTable
  readonly place: CellPlace | null
  readonly form?: CellForm
  readonly scope?: Scope
}

/** No name of a lot is longer, and a pattern is tried against each start. */
const LONGEST_NAME = 200

/** The fields that a text made up by a pattern holds; null where it is made up otherwise. */
function patternValues(text: string, pattern: string, context: PatternContext): FieldValue[] | null {
  if (LONGEST_NAME < text.length) return null
  const names = [...pattern.matchAll(IN_BRACES)].map(([, name = '']) => name)
  const parts = pattern.split(/\{[a-z-]+\}/).map((part) => literal(part).replace(/\s+/g, '\\s+'))
  const found = new RegExp(`^${parts.join('(.+?)')}$`, 'i').exec(text)
  if (found === null) return null
  const form = context.form ?? cellForm([], {})
  const values = names.map((name, index): FieldValue | null => {
    const field = fieldOf(context.table.holds, name)
    const reading = field && readCell({ kind: 'text', text: found[index + 1] ?? '' }, field.reads, form)
    if (field === undefined || reading === null || reading === undefined || 'fault' in reading) return null
    return { name, field, written: reading.written, place: context.place, scope: context.scope ?? {} }
  })
  return values.includes(null) ? null : (values as FieldValue[])
}

/** The values of a row that begins a block; null for any other row. */
function titleValues(row: ViewRow, { table, view }: TableToRead): FieldValue[] | null {
  const [only] = row.cells
  if (table.block === undefined || row.cells.size !== 1 || only === undefined) return null
  return patternValues(shownText(only[1]), table.block, { table, place: view.placeOf(row.row, only[0]) })
}

/** The values of a row; null where one of its cells is refused. */
function rowValues(
  row: ViewRow,
  columns: readonly PlacedColumn[],
  filled: Map<number, CellValue>,
  { table, view }: TableToRead,
  tell: TellFault,
): FieldValue[] | null {
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
  return sound ? values : null
}

type View = { readonly table: MappedTable; readonly view: SheetView }

/** Columns with a heading or with cells that no table of the sheet speaks of. */
function reportUnplaced(views: readonly View[], tell: TellFault): void {
  const placed = new Set<string>()
  const nameOf = (view: SheetView, column: number) =>
    `${view.onSide ? 'row' : 'column'} ${column}, headings ${view.headingRow}`
  for (const { table, view } of views)
    for (const heading of Object.keys(table.columns)) {
      const at = columnAt(heading, view)
      if (typeof at === 'number') placed.add(nameOf(view, at))
    }
  const told = new Set<string>()
  for (const { table, view } of views) {
    const below = view.rows.filter(({ row }) => view.headingRow < row && isWithin(row, table.rows))
    const single = table.block === undefined ? below : below.filter(({ cells }) => cells.size !== 1)
    const used = new Set([...view.headings.keys(), ...single.flatMap(({ cells }) => [...cells.keys()])])
    for (const column of [...used].sort((a, b) => a - b)) {
      const name = nameOf(view, column)
      if (placed.has(name) || told.has(name)) continue
      told.add(name)
      const heading = view.headings.get(column)
      tell({
        code: 'import-heading',
        severity: 'error',
        place: view.placeOf(view.headingRow, column),
        message:
          heading === undefined
            ? `the column has cells and no heading`
            : `the map does not say what the column "${shortened(heading)}" gives`,
        mend:
          heading === undefined
            ? `write "@${view.columnName(column)}": ${IGNORED} in the map, or what it gives`
            : `write "${shortened(heading)}": ${IGNORED} in the map, or the field or property that it gives`,
      })
    }
  }
}

/** Rows below the headings that no table takes, told by their numbers. */
function reportUnread(views: readonly View[], passed: ReadonlyMap<string, unknown>, tell: TellFault): void {
  const [first] = views
  if (first === undefined) return
  const lowest = Math.min(...views.map(({ view }) => view.headingRow))
  const sameWay = views.every(({ view }) => view.onSide === first.view.onSide)
  const left = sameWay
    ? first.view.rows.filter(({ row }) => lowest < row && !passed.has(rowKey(first.view, row)))
    : []
  const isHeading = (row: number) =>
    views.some(
      ({ table, view }) => Math.min(...[table.headings ?? 1].flat()) <= row && row <= view.headingRow,
    )
  for (const { row } of left.filter((one) => !isHeading(one.row)))
    tell({
      code: 'import-row',
      severity: 'note',
      place: first.view.placeOf(row, null),
      message: 'no table of the map reads this row',
      mend: 'change only or rows in the map where it is wanted; otherwise nothing is to do',
    })
}
