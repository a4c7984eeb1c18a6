/** Reading the records for a command: diagnostics to standard error, a fatal fault as one line. */
import { countWords } from '../words/numbers.ts'
import { diagnosticsText } from '../records/diagnostics/diagnostic-text.ts'
import { loadRecords, type Records } from '../records/load.ts'
import type { Diagnostic } from '../records/diagnostics/diagnostic.ts'
import { CommandFailure, EXIT, today } from './program.ts'

export interface ReadContent {
  readonly records: Records
  readonly diagnostics: readonly Diagnostic[]
  readonly errors: number
}

/** @throws CommandFailure (wrong use) when the folder itself cannot be read */
export function readContent(folder: string): ReadContent {
  const { records, diagnostics, fatal } = loadRecords(folder, today())
  if (fatal !== undefined) throw new CommandFailure(fatal.message, EXIT.wrongUse, fatal.mend)
  return {
    records,
    diagnostics,
    errors: diagnostics.filter((diagnostic) => diagnostic.severity === 'error').length,
  }
}

export function printDiagnostics({ records, diagnostics, errors }: ReadContent): void {
  if (diagnostics.length === 0) return
  const counts = [countWords(errors, 'error'), countWords(diagnostics.length - errors, 'warning')]
  process.stderr.write(`${diagnosticsText(diagnostics, records.contentDir)}\n${counts.join(', ')}\n`)
}

/** The records, or one failure after all diagnostics have been printed. */
export function readGoodContent(folder: string, consequence: string): Records {
  const content = readContent(folder)
  printDiagnostics(content)
  if (content.errors > 0) throw new CommandFailure(consequence, EXIT.failed)
  return content.records
}
