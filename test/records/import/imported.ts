/** A table and a map as a user writes them, to the records that they give. */
import { parseYaml } from '../../../src/records/yaml/parse-yaml.ts'
import type { Diagnostic } from '../../../src/records/diagnostics/diagnostic.ts'
import { fileReport } from '../../../src/records/diagnostics/report.ts'
import { readCsv } from '../../../src/records/import/csv.ts'
import { cellWords, type Sheet } from '../../../src/records/import/grid.ts'
import { importFaultText } from '../../../src/records/import/import-fault.ts'
import { type ImportMap, readImportMap } from '../../../src/records/import/import-map.ts'
import {
  differenceFault,
  type ImportOrigin,
  type ImportPlan,
  planImport,
} from '../../../src/records/import/plan-import.ts'

export interface Given {
  readonly map: string
  /** A table of text, or sheets. */
  readonly table: string | readonly Sheet[]
  readonly onRecord?: Readonly<Record<string, string>>
  readonly replace?: boolean
  readonly digest?: string
  readonly origin?: ImportOrigin
}

export const ORIGIN = { file: 'bench.csv', digest: `sha256-${'0'.repeat(64)}`, on: '2026-03-11' }

/** What is wrong with a map, a line each. */
export function mapFaults(map: string): string[] {
  const diagnostics: Diagnostic[] = []
  readImportMap(map, fileReport('map.yaml', map, diagnostics))
  return diagnostics.map(({ line, column, message, mend }) => `${line}:${column} ${message}; ${mend}`)
}

/** The map in a text; a fault in it fails the test by its message. */
export function mapOf(map: string): ImportMap {
  const read = readImportMap(map, fileReport('map.yaml', map, []))
  if (read === undefined) throw new Error(`the map has faults: ${mapFaults(map).join(' | ')}`)
  return read
}

export function planned({
  map,
  table,
  onRecord = {},
  replace = false,
  digest,
  origin = ORIGIN,
}: Given): ImportPlan {
  const read = mapOf(map)
  const sheets = typeof table === 'string' ? [readCsv(Buffer.from(table), read).sheet] : table
  return planImport({
    sheets,
    map: read,
    origin: digest === undefined ? origin : { ...origin, digest },
    textAt: (path) => onRecord[path] ?? null,
    replace,
  })
}

/** The texts of records by path, without the line of their origin. */
export function texts(given: Given): Record<string, string> {
  return Object.fromEntries(
    planned(given).changes.map(({ path, text }) => [path, text.replace(/\n+imported:\n.*\n/, '\n')]),
  )
}

/** What is told of a file: place, words and fix, a line each. */
export function told(given: Given): string[] {
  const { faults, differences } = planned(given)
  return [...faults, ...differences.map(differenceFault)].map((fault) =>
    importFaultText('bench.csv', fault).replace('\n  fix: ', ' -> '),
  )
}

/** A record of a plan as plain values. */
export function recordIn(plan: ImportPlan, path: string): Record<string, unknown> {
  const parsed = parseYaml(written(plan)[path] ?? '')
  return 'value' in parsed ? (parsed.value as Record<string, unknown>) : {}
}

/** The texts that a plan would write, by path. */
export function written(plan: ImportPlan): Record<string, string> {
  return Object.fromEntries(plan.changes.map(({ path, text }) => [path, text]))
}

/** Errors of a plan, each as its cell and message. */
export function errorsOf(plan: ImportPlan): string[] {
  return plan.faults
    .filter(({ severity }) => severity === 'error')
    .map(({ place, message }) => `${place === null ? '' : cellWords(place)}: ${message}`)
}
