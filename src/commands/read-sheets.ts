/** The sheets of a spreadsheet's file, and what its bytes are. */
import { readFileSync, statSync } from 'node:fs'
import { basename } from 'node:path'
import { readCsv, type CsvForm } from '../records/import/csv.ts'
import type { Sheet } from '../records/import/grid.ts'
import type { ImportFault } from '../records/import/import-fault.ts'
import { readWorkbook } from '../records/import/xlsx.ts'
import { WorkbookFault } from '../records/import/zip.ts'
import { CommandFailure, EXIT } from './program.ts'
import { digestOf } from '../records/issued/digest.ts'

/** A year of a laboratory's sheets has a few MiB. */
const LARGEST_BYTES = 64 * 1024 * 1024

export interface SheetFile {
  readonly name: string
  readonly digest: string
  readonly sheets: readonly Sheet[]
  readonly faults: readonly ImportFault[]
}

/** @throws CommandFailure for a file that cannot be read */
export function readSheets(path: string, form: CsvForm = {}): SheetFile {
  const bytes = bytesOf(path)
  const name = basename(path)
  const digest = digestOf(bytes)
  try {
    if (/\.xlsx$/i.test(path)) return { name, digest, sheets: readWorkbook(bytes), faults: [] }
    const { sheet, faults } = readCsv(bytes, form)
    return {
      name,
      digest,
      sheets: [sheet],
      faults: faults.map(({ place, found }) => ({
        code: 'import-row',
        severity: 'error',
        place,
        message: `a quote of this row is not as it should be: ${found}`,
        mend: 'close the quote, or double a quote that is part of the text',
      })),
    }
  } catch (error) {
    if (!(error instanceof WorkbookFault)) throw error
    throw new CommandFailure(`${path}: ${error.message}.`, EXIT.failed, error.mend)
  }
}

/** Bytes of a file that may be a spreadsheet's. @throws CommandFailure */
function bytesOf(path: string): Buffer {
  if (!/\.(xlsx|csv|tsv|txt)$/i.test(path))
    throw new CommandFailure(
      `${path} is neither .xlsx nor .csv.`,
      EXIT.wrongUse,
      /\.(xlsm|xls|ods|numbers)$/i.test(path) ? 'save it as .xlsx' : 'name a spreadsheet',
    )
  const status = statSync(path, { throwIfNoEntry: false })
  if (status === undefined || !status.isFile())
    throw new CommandFailure(
      status?.isDirectory() === true ? `${path} is a folder.` : `There is no file ${path}.`,
      EXIT.wrongUse,
      'write the path of a spreadsheet as it is',
    )
  if (LARGEST_BYTES < status.size)
    throw new CommandFailure(
      `${path} is larger than ${LARGEST_BYTES / 1024 / 1024} MiB.`,
      EXIT.failed,
      'save the sheets that are to be imported in a file of their own',
    )
  return readFileSync(path)
}
