/** Where the readings of a reference test stand: in the study, or in a table beside it, which is read once. */
import type { FileReport } from '../../diagnostics/report.ts'
import type { Tell } from '../study-readings.ts'
import { ownRows, type ReadRows, readRows, type RowKinds } from './reading-rows.ts'
import { type MaterialRow, materialRows, type TableText } from './table-rows.ts'

/** Reads a table by its name; null where it cannot be read, which is told at the pointer. */
export type ReadTable = (file: string, pointer: string) => TableText | null

/** What says where readings stand. */
export interface RowsEntry {
  readonly readings?: readonly string[]
  readonly file?: string
}

export interface RowsPlace {
  readonly material: string
  readonly pointer: string
  readonly report: FileReport
}

export class ReferenceTables {
  readonly #read: ReadTable
  readonly #tables = new Map<string, readonly MaterialRow[] | null>()

  readonly #materials: readonly string[]

  /** @param materials codes of the study, one of which each row of a table with a material names */
  constructor(read: ReadTable, materials: readonly string[]) {
    this.#read = read
    this.#materials = materials
  }

  /** @returns the rows of one test; null where they are missing or at fault, which is told */
  rowsOf(entry: RowsEntry, kinds: RowKinds, at: RowsPlace): ReadRows | null {
    const { readings, file } = entry
    const { pointer, report } = at
    if (readings !== undefined && file !== undefined)
      report.atKey(
        `${pointer}/file`,
        'reading-twice',
        'the test has readings of its own and a table',
        'keep one of the two',
      )
    else if (readings !== undefined) {
      const rows = ownRows(readings, `${pointer}/readings`, report)
      return rows === null ? null : readRows(rows, kinds)
    } else if (file !== undefined) return this.#tableRows(file, kinds, at)
    else
      report.atKey(
        pointer,
        'key-missing',
        'the test has no readings',
        'add readings, a row each, or file with the name of a table beside the study',
      )
    return null
  }

  #tableRows(file: string, kinds: RowKinds, { material, pointer, report }: RowsPlace): ReadRows | null {
    const place = `${pointer}/file`
    const rows = this.#rowsIn(file, kinds, place)
    if (rows === null) {
      report.at(
        place,
        'reference-mismatch',
        `the table studies/${file} cannot be used here`,
        'mend it first; its faults are reported with their lines',
      )
      return null
    }
    const own = rows.filter((row) => row.material === null || row.material === material)
    if (own.length === 0) {
      report.at(
        place,
        'reference-mismatch',
        `the table studies/${file} has no rows of ${material}`,
        'add them, or name the table that has them',
      )
      return null
    }
    const found = readRows(own, kinds)
    if (found === null)
      report.at(
        place,
        'reference-mismatch',
        `the rows of ${material} in studies/${file} have faults`,
        'mend them first; they are reported with their lines',
      )
    return found === null ? null : { ...found, tell: (row) => this.#both(found.tell(row), { place, report }) }
  }

  /** A fault of a row in a table is told there, and at the study, which is unsound with it. */
  #both(tell: Tell, { place, report }: { readonly place: string; readonly report: FileReport }): Tell {
    return (code, message, mend) => {
      tell(code, message, mend)
      report.at(
        place,
        'reference-mismatch',
        'a row of this table is at fault',
        'mend it first; it is reported with its line',
      )
    }
  }

  #rowsIn(file: string, { x }: RowKinds, pointer: string): readonly MaterialRow[] | null {
    const key = `${x} ${file}`
    const known = this.#tables.get(key)
    if (known !== undefined) return known
    const table = this.#read(file, pointer)
    const rows = table === null ? null : materialRows(table, x, this.#materials)
    this.#tables.set(key, rows)
    return rows
  }
}
