/** A column of a spreadsheet, pasted into the readings. */
import { commaReadings } from '../../core/measure/comma-numbers.ts'

/** What the commas of a pasted column are: nobody but its owner knows. */
export type CommaMeaning = 'decimal' | 'thousands'

/** The cells of a column, or of a row, in order; empty ones at its end are left out. */
export function pastedCells(text: string): string[] {
  const cells = text.split(/\r?\n|\t/).map((cell) => cell.trim())
  while (cells.at(-1) === '') cells.pop()
  return cells
}

/** Whether a text is several cells and not one value. */
export function isColumn(text: string): boolean {
  return 1 < pastedCells(text).length
}

/** The first cell with a comma between digits, with what it would be either way; undefined where none has one. */
export function commaCell(
  cells: readonly string[],
): { readonly cell: string; readonly decimal: string; readonly thousands: string } | undefined {
  const cell = cells.find((text) => /\d,\d/.test(text))
  if (cell === undefined) return undefined
  return { cell, decimal: withoutCommas(cell, 'decimal'), thousands: withoutCommas(cell, 'thousands') }
}

function withoutCommas(cell: string, meaning: CommaMeaning): string {
  return meaning === 'decimal'
    ? cell.replaceAll(/(?<=\d)[.\u00a0\u202f ](?=\d{3})/g, '').replace(/(?<=\d),(?=\d)/, '.')
    : cell.replaceAll(/(?<=\d),(?=\d)/g, '')
}

/** Blanks and apostrophes between groups of three digits, which can be nothing else than thousands signs. */
function withoutGroups(cell: string): string {
  return cell.replace(/(?<![\d.])\d{1,3}(?:[ \u00a0\u2009\u202f'’]\d{3})+(?!\d)/, (number) =>
    number.replaceAll(/\D/g, ''),
  )
}

const NUMBER = /^[<>]?\s*[+-]?\d+(?:\.\d+)?$/
const QUANTITY = /^[<>]?\s*[+-]?\d+(?:\.\d+)?\s*\D.*$/

export type ReadColumn =
  | { readonly cells: readonly string[]; readonly asksUnit: boolean }
  | { readonly fault: string }

/**
 * The cells as they would be written, without commas and each with its unit.
 * @param unit for numbers without one of their own
 * @returns an empty cell as it is: its field is passed over; a fault for one that is no reading, and for commas that
 * cannot all mean the same
 */
export function readColumn(
  cells: readonly string[],
  { comma, unit }: { readonly comma?: CommaMeaning; readonly unit?: string },
): ReadColumn {
  const read: string[] = []
  let asksUnit = false
  for (const cell of cells) {
    const text = withoutGroups(comma === undefined ? cell : withoutCommas(cell, comma))
    if (text.includes(',') || (comma !== undefined && !isPossible(cell, text)))
      return {
        fault: `“${cell}” cannot be read with the comma as ${comma === 'thousands' ? 'thousands sign' : 'decimal sign'}`,
      }
    if (NUMBER.test(text)) {
      asksUnit = true
      read.push(unit === undefined || unit === '' ? text : `${text} ${unit}`)
    } else if (text === '' || QUANTITY.test(text)) read.push(text)
    else return { fault: `“${cell}” is no reading: copy the figures without their heading` }
  }
  return { cells: read, asksUnit }
}

/** "0,485" can only be a decimal number, "1,234,567" only a grouped one. */
function isPossible(cell: string, read: string): boolean {
  const [number = ''] = /[\d.,]*\d/.exec(cell) ?? []
  const [own = ''] = /[\d.]*\d/.exec(read) ?? []
  return !number.includes(',') || commaReadings(number).includes(own)
}
