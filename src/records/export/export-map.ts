/** The map that stands beside an exported table. */
import { type Plain, writeYaml } from '../edit/write-yaml.ts'
import type { ExportTable } from './table-builder.ts'

/** What an exported table never holds: texts and answers that stand in no column, and what only issuing writes. */
export const NOT_EXPORTED =
  'revisions, answers, verification results, documents, facts, constituents of a blend, classes under single criteria, criteria of single lots, earlier addresses, results of a control analysed alongside and remarks on single results stay in the records alone'

/** @param file name of the spreadsheet */
export function exportMap(tables: readonly ExportTable[], file: string): string {
  const map = { tables: tables.map(({ mapped }) => mapped as unknown as Plain) }
  return `# Reads ${file} back: import ${file} --map THIS-FILE\n# Not in it: ${NOT_EXPORTED}.\n${writeYaml(map)}`
}
