/** What of a file no table of the map reads, and what the map names that the file has not. */
import { fitsPattern } from '../../core/measure/text-pattern.ts'
import { nearNames } from '../diagnostics/near-names.ts'
import { shortened } from '../schema/schema-words.ts'
import { columnAt } from './column-at.ts'
import type { Sheet } from './grid.ts'
import { meansSheet } from './hidden-parts.ts'
import type { ImportFault, TellFault } from './import-fault.ts'
import { IGNORED, type ImportMap, type MappedTable } from './import-map.ts'
import { isWithin, rowKey, type SheetView } from './sheet-view.ts'

/** Sheets that no table reads, and those that the file has not. */
export function reportSheets(
  readings: readonly { readonly sheet: Sheet; readonly tables: readonly MappedTable[] }[],
  map: ImportMap,
  tell: TellFault,
): void {
  const sheets = readings.flatMap(({ sheet }) => (sheet.name === null ? [] : [sheet]))
  const left = map['not-read'] ?? []
  for (const { sheet, tables } of readings)
    if (
      tables.length === 0 &&
      0 < sheet.rows.length &&
      !left.some((pattern) => fitsPattern(sheet.name ?? '', pattern))
    )
      tell(sheet.hidden === true ? hiddenSheet(sheet) : unreadSheet(sheet))
  for (const { sheet: named } of map.tables)
    if (named !== undefined && 0 < sheets.length && !sheets.some((sheet) => meansSheet(named, sheet)))
      tell({
        code: 'import-sheet',
        severity: 'error',
        place: null,
        message: `the file has no sheet "${named}"${named.includes('*') ? ' that it shows' : ''}`,
        mend:
          nearNames(
            named,
            sheets.map(({ name }) => name ?? ''),
          ) || 'write the name of a sheet of the file, a hidden one in full',
      })
}

function unreadSheet({ name }: Sheet): ImportFault {
  return {
    code: 'import-sheet',
    severity: 'note',
    place: null,
    message: `the map reads nothing of the sheet "${name}"`,
    mend: `write a table for it, or name it under not-read`,
  }
}

function hiddenSheet({ name }: Sheet): ImportFault {
  return {
    code: 'import-hidden',
    severity: 'note',
    place: null,
    message: `the sheet "${name}" is hidden and is left out`,
    mend: 'name it in full under sheet in the map where it is wanted, or under not-read',
  }
}

type View = { readonly table: MappedTable; readonly view: SheetView }

/** Columns with a heading or with cells that no table of the sheet speaks of. */
export function reportUnplaced(views: readonly View[], tell: TellFault): void {
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
export function reportUnread(
  views: readonly View[],
  passed: ReadonlyMap<string, unknown>,
  tell: TellFault,
): void {
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
