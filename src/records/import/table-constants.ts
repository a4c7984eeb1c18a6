/** What holds for all rows of a table: what the map says of them, the name of the sheet, single cells of it. */
import { cellForm } from './cell-value.ts'
import { cellValues, type FieldValue, patternValues } from './cell-values.ts'
import { fieldOf } from './fields.ts'
import { columnOfLetters, type Sheet } from './grid.ts'
import type { TellFault } from './import-fault.ts'
import { type Column, columnOf, type ImportMap, type MappedTable } from './import-map.ts'

interface TableOfSheet {
  readonly sheet: Sheet
  readonly map: ImportMap
  readonly table: MappedTable
}

/** What holds for all rows of a table; null where one of it cannot be read, which is told. */
export function constantsOf({ sheet, map, table }: TableOfSheet, tell: TellFault): FieldValue[] | null {
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
  { sheet, map, table }: TableOfSheet,
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
