/** Codes of what an import says of a spreadsheet and its map. */

/** What each code means; codes are permanent. */
export const IMPORT_CODES = {
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
