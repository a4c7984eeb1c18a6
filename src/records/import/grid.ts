/** What a workbook or a table of text holds, cell by cell, whichever kind of file it came from. */

export type CellValue =
  | { readonly kind: 'text'; readonly text: string }
  /**
   * A number with a decimal point and the decimals that the sheet shows. `percent`: the sheet shows it in per cent, and
   * so does the text. `padded`: as shown with leading noughts, where the sheet shows them.
   */
  | { readonly kind: 'number'; readonly text: string; readonly percent?: true; readonly padded?: string }
  /** "2026-12-31" or "2026-12-31T09:20", a day or a moment of the sheet's own. */
  | { readonly kind: 'date'; readonly text: string }
  /** "09:20", a time of day of the sheet's own. */
  | { readonly kind: 'time'; readonly text: string }
  /** What cannot be taken as a value: "#DIV/0!", a formula without a result. */
  | { readonly kind: 'fault'; readonly text: string }

export interface SheetRow {
  /** From 1, as the spreadsheet numbers it. */
  readonly row: number
  /** By column from 0; blank cells are left out. */
  readonly cells: ReadonlyMap<number, CellValue>
  /** Cells that the row has in a file of text, blank ones included. */
  readonly width?: number
}

/** Cells merged into one, bounds included; rows from 1, columns from 0. */
export interface MergedCells {
  readonly rows: readonly [number, number]
  readonly columns: readonly [number, number]
}

export interface Sheet {
  /** null for a file that is one table. */
  readonly name: string | null
  /** Rows that are not blank, from top to bottom. */
  readonly rows: readonly SheetRow[]
  readonly merged: readonly MergedCells[]
  /** The workbook does not show it. */
  readonly hidden?: true
  /** Rows that the sheet does not show. */
  readonly hiddenRows?: readonly number[]
  /** Columns that the sheet does not show, from 0: first and last. */
  readonly hiddenColumns?: readonly (readonly [number, number])[]
}

/** A cell of a file, or a whole row of it. */
export interface CellPlace {
  readonly sheet: string | null
  readonly row: number
  /** From 0; null for the whole row. */
  readonly column: number | null
}

/** Letters of a spreadsheet's column: 0 is A, 26 is AA. */
export function columnLetters(column: number): string {
  const rest = Math.floor(column / 26)
  return `${rest === 0 ? '' : columnLetters(rest - 1)}${String.fromCharCode(65 + (column % 26))}`
}

/** The column that letters name, from 0; null for what names none. */
export function columnOfLetters(letters: string): number | null {
  if (!/^[A-Z]{1,3}$/.test(letters)) return null
  return [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1
}

/** Whether a cell's text holds nothing to see. */
export function isBlank(text: string): boolean {
  return /^[\s\u00a0\u200b\ufeff]*$/.test(text)
}

/** A place within a file as a person finds it: "Sheet!C7", "C7" in a file that is one table, "Sheet!row 7". */
export function cellWords({ sheet, row, column }: CellPlace): string {
  const cell = column === null ? `row ${row}` : `${columnLetters(column)}${row}`
  return sheet === null ? cell : `${sheet}!${cell}`
}

/** The same with the name of the file before it. */
export function placeWords(file: string, place: CellPlace): string {
  return `${file}!${cellWords(place)}`
}
