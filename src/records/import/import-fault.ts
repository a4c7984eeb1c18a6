/** What an import says of a cell, a row, a heading or a sheet that it cannot take. */
import type { ImportCode } from '../diagnostics/import-codes.ts'
import { type CellPlace, placeWords } from './grid.ts'

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
