/** Lines of CSV for spreadsheets: RFC 4180, decimal point, UTF-8. */
import type { Age } from '../../core/measure/age.ts'
import type { Moment } from '../../core/measure/moment.ts'

/** Tells a spreadsheet that the text is UTF-8. Source: The Unicode Standard, section 23.8. */
export const BYTE_ORDER_MARK = '\ufeff'

export type Cell = string | number | Moment | Age | null | undefined

/** Rows as lines, the last with its end; empty for none. */
export function lines(rows: readonly (readonly Cell[])[]): string {
  return rows.map((row) => `${row.map((value) => quoted(cell(value))).join(',')}\n`).join('')
}

/** A spreadsheet whose lists have semicolons parts a line at them too, unless they stand in quotes. */
function quoted(text: string): string {
  return /[",;\t\n\r]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text
}

/** A cell that a spreadsheet could take for a formula is kept text by a leading apostrophe. */
function cell(value: Cell): string {
  if (value === null || value === undefined) return ''
  return typeof value === 'string' && isLikeFormula(value) ? `'${value}` : String(value)
}

/** A signed figure with at most "%" or a unit in words behind it can only be computed to itself. */
function isLikeFormula(text: string): boolean {
  // Where letters are wide, so are the signs that begin a formula.
  return (
    /^[=+\-@\t\r\uff1d\uff0b\uff0d\uff20]/.test(text) &&
    !/^[+-]\d+(?:\.\d+)?(?: ?%| [A-Za-z]+(?: [A-Za-z]+)?)?$/.test(text)
  )
}
