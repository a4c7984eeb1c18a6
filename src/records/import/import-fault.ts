/** What an import says of a cell, a row, a heading or a sheet that it cannot take. */
import { type CellPlace, placeWords } from './grid.ts'

/** What each code means; codes are permanent. */
export const IMPORT_CODES = {
  'import-file': 'a file that is no workbook and no table of text',
  'import-sheet': 'a sheet that the map does not name, or one that it names and the file has not',
  'import-hidden': 'a sheet, rows or columns that the workbook hides',
  'import-heading': 'a heading that the map does not place, or one that it places and the sheet has not',
  'import-cell': 'a cell that is not what its column gives',
  'import-row': 'a row that does not say all that it must, or whose record cannot be told',
  'import-twice': 'two cells of one file that state one value differently',
  'import-differs': 'a value on record that the file states differently',
  'import-record': 'a record that the file would make and that cannot be read',
} as const

export type ImportCode = keyof typeof IMPORT_CODES

export interface ImportFault {
  readonly code: ImportCode
  /** A note says what is left out, and stops nothing. */
  readonly severity: 'error' | 'note'
  /** null where no place in the file is to blame. */
  readonly place: CellPlace | null
  /** What was found and what is expected. */
  readonly message: string
  readonly mend: string
}

/** Takes what is found while a file is read. */
export type TellFault = (fault: ImportFault) => void

/** A fault with its place and how to fix it, on two lines. */
export function importFaultText(file: string, { code, severity, place, message, mend }: ImportFault): string {
  const where = place === null ? file : placeWords(file, place)
  return `${where}: ${severity === 'note' ? 'note: ' : ''}${message} [${code}]\n  fix: ${mend}`
}

/** By place, top to bottom within a sheet, sheets in the order given. */
export function inFileOrder(
  faults: readonly ImportFault[],
  sheets: readonly (string | null)[],
): ImportFault[] {
  const sheetOf = ({ place }: ImportFault) => (place === null ? -1 : sheets.indexOf(place.sheet))
  return faults.toSorted(
    (a, b) =>
      sheetOf(a) - sheetOf(b) ||
      (a.place?.row ?? 0) - (b.place?.row ?? 0) ||
      (a.place?.column ?? -1) - (b.place?.column ?? -1),
  )
}
