/**
 * What a workbook hides: a hidden sheet is read where the map names it in full, and hidden rows and columns are read like any
 * others, since a filter that somebody left on would lose them. Either is told.
 */
import { fitsPattern } from '../../core/measure/text-pattern.ts'
import { plural } from '../../words/numbers.ts'
import { columnAt } from './column-at.ts'
import { columnLetters, type Sheet } from './grid.ts'
import type { TellFault } from './import-fault.ts'
import { columnOf, IGNORED, type MappedTable } from './import-map.ts'
import type { SheetView } from './sheet-view.ts'

/** Whether the name of a sheet in a map means this one. */
export function meansSheet(named: string, { name, hidden }: Sheet): boolean {
  return hidden === true ? name === named : name === null || fitsPattern(name, named)
}

interface ReadView {
  readonly table: MappedTable
  readonly view: SheetView
  /** Numbers of the rows that were read, as the view counts them. */
  readonly rows: readonly number[]
}

/** Rows and columns of a sheet that are hidden and have been read. */
export function reportHidden(sheet: Sheet, views: readonly ReadView[], tell: TellFault): void {
  const rows = new Set<number>()
  const columns = new Set<number>()
  for (const { table, view, rows: read } of views) {
    const gives = Object.entries(table.columns)
      .filter(([, column]) => columnOf(column).to !== IGNORED)
      .map(([heading]) => columnAt(heading, view))
      .filter((at) => typeof at === 'number')
    // A table on its side counts columns as rows.
    for (const row of read) (view.onSide ? columns : rows).add(view.onSide ? row - 1 : row)
    for (const at of gives) (view.onSide ? rows : columns).add(view.onSide ? at + 1 : at)
  }
  const hiddenRows = (sheet.hiddenRows ?? []).filter((row) => rows.has(row))
  const hiddenColumns = (sheet.hiddenColumns ?? []).flatMap(([first, last]) =>
    [...columns].filter((column) => first <= column && column <= last).sort((a, b) => a - b),
  )
  tellOf(hiddenRows.map(String), ['row', 'rows'], { sheet, tell })
  tellOf(hiddenColumns.map(columnLetters), ['column', 'columns'], { sheet, tell })
}

/** Names that a note gives. */
const NAMED = 5

function tellOf(
  names: readonly string[],
  [one, many]: readonly [string, string],
  { sheet, tell }: { readonly sheet: Sheet; readonly tell: TellFault },
): void {
  if (names.length === 0) return
  const rest = names.length - NAMED
  const named = `${names.slice(0, NAMED).join(', ')}${rest <= 0 ? '' : ` and ${rest} more`}`
  const are = plural(names.length, `hidden ${one} is`, `hidden ${many} are`)
  tell({
    code: 'import-hidden',
    severity: 'note',
    place: null,
    message: `${are} read like the others of the sheet "${sheet.name}": ${named}`,
    mend: `look at ${names.length === 1 ? 'it' : 'them'} in the spreadsheet; what is not wanted is left out by ${one === 'row' ? 'except or rows' : 'ignore'} in the map`,
  })
}
