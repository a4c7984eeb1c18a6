/** A table of text with separators as a sheet of cells, each addressed as a spreadsheet would show it. */
import papaparse from 'papaparse'
import { type CellPlace, type CellValue, isBlank, type Sheet, type SheetRow } from './grid.ts'
import { WorkbookFault } from './zip.ts'

export type Encoding = 'utf-8' | 'windows-1252'

export interface CsvForm {
  readonly encoding?: Encoding
  readonly separator?: 'comma' | 'semicolon' | 'tab'
}

export interface CsvTable {
  readonly sheet: Sheet
  /** Rows whose quotes do not close. */
  readonly faults: readonly { readonly place: CellPlace; readonly found: string }[]
}

const SIGNS = { comma: ',', semicolon: ';', tab: '\t' } as const

/** As many as a sheet of a spreadsheet has. */
const MOST_COLUMNS = 16_384

/** @throws WorkbookFault for bytes that are not text in the encoding named, and for rows longer than those of a spreadsheet */
export function readCsv(bytes: Buffer, form: CsvForm = {}): CsvTable {
  if (bytes.subarray(0, 4).toString('latin1') === 'PK\x03\x04')
    throw new WorkbookFault('the file is a workbook by its content', 'name it .xlsx')
  const text = decodedText(bytes, form.encoding ?? 'utf-8')
  if (isBlank(text)) throw new WorkbookFault('the file is empty', 'save the sheet anew as CSV')
  const { data, errors } = papaparse.parse<string[]>(text, {
    delimiter: SIGNS[form.separator ?? separatorIn(text)],
    header: false,
    skipEmptyLines: false,
  })
  const widest = data.findIndex(({ length }) => MOST_COLUMNS < length)
  if (0 <= widest)
    throw new WorkbookFault(
      `row ${widest + 1} has more than ${MOST_COLUMNS} cells`,
      'check which sign parts the columns, or take out those that are not needed',
    )
  const rows = data.flatMap((cells, index): SheetRow[] => {
    const filled = cells.flatMap((cell, column): [number, CellValue][] =>
      isBlank(cell) ? [] : [[column, { kind: 'text', text: cell }]],
    )
    return filled.length === 0 ? [] : [{ row: index + 1, cells: new Map(filled), width: cells.length }]
  })
  const faults = errors
    .filter(({ type }) => type === 'Quotes')
    .map(({ row = 0, message }) => ({ place: { sheet: null, row: row + 1, column: null }, found: message }))
  return { sheet: { name: null, rows, merged: [] }, faults }
}

/** Rows in which the sign is sought that parts the columns. */
const FIRST_ROWS = 30

/**
 * The sign that parts the columns: one that at least half of the first rows have. Note: counts decide nothing, since in
 * "23,4;6,9" commas are the more frequent; nor does the first row, which may be a title.
 */
function separatorIn(text: string): keyof typeof SIGNS {
  const rows = text
    .slice(0, 100_000)
    .replaceAll(/"(?:[^"]|"")*"/g, '')
    .split(/\r?\n/)
    .filter((row) => !isBlank(row))
    .slice(0, FIRST_ROWS)
  const parts = (sign: string) => rows.length <= 2 * rows.filter((row) => row.includes(sign)).length
  if (0 < rows.length && parts(SIGNS.tab)) return 'tab'
  return 0 < rows.length && parts(SIGNS.semicolon) ? 'semicolon' : 'comma'
}

function decodedText(bytes: Buffer, encoding: Encoding): string {
  const wide = bytes[0] === 0xff && bytes[1] === 0xfe
  try {
    // Text that a spreadsheet calls "Unicode" says so by its first two bytes.
    return new TextDecoder(wide ? 'utf-16le' : encoding, { fatal: true }).decode(bytes)
  } catch {
    throw new WorkbookFault(
      'the file is not UTF-8 text',
      'save it as CSV UTF-8, or write encoding: windows-1252 in the map where an older spreadsheet made it',
    )
  }
}
