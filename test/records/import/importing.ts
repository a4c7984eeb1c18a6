/** Tables written out as text, imported by a map into records that a test holds. */
import { parseYaml } from '../../../src/records/yaml/parse-yaml.ts'
import type { Diagnostic } from '../../../src/records/diagnostics/diagnostic.ts'
import { fileReport } from '../../../src/records/diagnostics/report.ts'
import { readCsv } from '../../../src/records/import/csv.ts'
import { cellWords, type Sheet } from '../../../src/records/import/grid.ts'
import { type ImportMap, readImportMap } from '../../../src/records/import/import-map.ts'
import { type ImportPlan, planImport } from '../../../src/records/import/plan-import.ts'

/** The map in a text; a fault in it fails the test by its message. */
export function mapOf(text: string): ImportMap {
  const diagnostics: Diagnostic[] = []
  const map = readImportMap(text, fileReport('map.yaml', text, diagnostics))
  if (map === undefined)
    throw new Error(diagnostics.map(({ line, message }) => `${line}: ${message}`).join('\n'))
  return map
}

/** @param onRecord texts of records by path */
export function imported(
  table: string | readonly Sheet[],
  map: string,
  { onRecord = {}, replace = false }: { onRecord?: Readonly<Record<string, string>>; replace?: boolean } = {},
): ImportPlan {
  const read = mapOf(map)
  return planImport({
    sheets: typeof table === 'string' ? [readCsv(Buffer.from(table), read).sheet] : table,
    map: read,
    origin: { file: 'sheet.csv', digest: `sha256-${'0'.repeat(64)}`, on: '2026-11-27' },
    textAt: (path) => onRecord[path] ?? null,
    replace,
  })
}

/** The texts that a plan would write, by path. */
export function written(plan: ImportPlan): Record<string, string> {
  return Object.fromEntries(plan.changes.map(({ path, text }) => [path, text]))
}

/** A record of a plan as plain values. */
export function recordIn(plan: ImportPlan, path: string): Record<string, unknown> {
  const parsed = parseYaml(written(plan)[path] ?? '')
  return 'value' in parsed ? (parsed.value as Record<string, unknown>) : {}
}

/** Errors of a plan, each as its cell and message. */
export function errorsOf(plan: ImportPlan): string[] {
  return plan.faults
    .filter(({ severity }) => severity === 'error')
    .map(({ place, message }) => `${place === null ? '' : cellWords(place)}: ${message}`)
}
