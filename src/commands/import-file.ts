/** One file taken into the records: read by its map, held against what is on record, shown, written. */
import { basename, dirname } from 'node:path'
import { computeEdition } from '../edition/compute.ts'
import type { Edition } from '../edition/shape/edition.ts'
import { standingOf } from '../edition/shape/standing.ts'
import { diagnosticsText } from '../records/diagnostics/diagnostic-text.ts'
import type { Diagnostic } from '../records/diagnostics/diagnostic.ts'
import { fileReport } from '../records/diagnostics/report.ts'
import { readText } from '../records/files.ts'
import { type AlikeFaults, alikeFaults, alikeFaultsText } from '../records/import/alike-faults.ts'
import { type ImportFault, inFileOrder } from '../records/import/import-fault.ts'
import { type ImportMap, readImportMap } from '../records/import/import-map.ts'
import {
  differenceFault,
  type ImportPlan,
  pathWords,
  planImport,
  type RecordChange,
  recordFault,
} from '../records/import/plan-import.ts'
import { hasSite, type LoadedContent, loadRecords } from '../records/load.ts'
import { countWords } from '../words/numbers.ts'
import { plainSpaces } from '../words/sentences.ts'
import { lockContent } from './folder-lock.ts'
import { CommandFailure, EXIT, PROGRAM, today, commandLine } from './program.ts'
import { readSheets, type SheetFile } from './read-sheets.ts'
import { finishWriting, writeTogether } from './write-together.ts'

/** What is asked of an import. */
export interface ImportOptions {
  readonly content: string
  readonly write?: boolean
  readonly replace?: boolean
  readonly records?: boolean
  /** Every fault is told, not one of each cause. */
  readonly all?: boolean
}

/** A dry run changes nothing, and needs nobody to wait. */
function underLock({ content, write }: ImportOptions, work: () => number): number {
  if (write !== true) return work()
  const release = lockContent(content)
  try {
    const finished = finishWriting(content)
    if (0 < finished)
      process.stdout.write(`${countWords(finished, 'record')} of an interrupted import written.\n`)
    return work()
  } finally {
    release()
  }
}

/** @throws CommandFailure for a map that cannot be read, after all that is wrong with it */
export function mapAt(path: string): ImportMap {
  const folder = dirname(path)
  const name = basename(path)
  const read = readText(folder, name)
  if ('fault' in read) throw unreadMap(path, read.fault)
  const diagnostics: Diagnostic[] = []
  const map = readImportMap(read.text, fileReport(name, read.text, diagnostics))
  if (map !== undefined) return map
  process.stderr.write(`${diagnosticsText(diagnostics, folder)}\n`)
  throw new CommandFailure('Nothing was imported: the map has faults.', EXIT.failed)
}

function unreadMap(path: string, fault: string): CommandFailure {
  if (fault === 'missing')
    return new CommandFailure(
      `There is no map ${path}.`,
      EXIT.wrongUse,
      `write one with ${commandLine('import', 'FILE --propose')}`,
    )
  return new CommandFailure(
    `The map ${path} cannot be read.`,
    EXIT.wrongUse,
    'check its permissions, and that it is a text file in UTF-8',
  )
}

/**
 * Takes a file into the records, or shows what would become of it.
 * @returns the exit status
 * @throws CommandFailure for a file or a content folder that cannot be read or written
 */
export function importFile(path: string, map: ImportMap, options: ImportOptions): number {
  return underLock(options, () => imported(path, map, options))
}

function imported(path: string, map: ImportMap, options: ImportOptions): number {
  const { content } = options
  const file = readSheets(path, map)
  const day = today()
  const before = loadRecords(content, day)
  if (before.fatal !== undefined)
    throw new CommandFailure(before.fatal.message, EXIT.wrongUse, before.fatal.mend)
  if (before.nothingRead === true) {
    process.stderr.write(`${diagnosticsText(before.diagnostics, content)}\n`)
    throw new CommandFailure('Nothing was imported.', EXIT.failed)
  }
  const plan = planImport({
    sheets: file.sheets,
    map,
    origin: { file: file.name, digest: file.digest, on: day.text },
    textAt: (record) => {
      const read = readText(content, record)
      return 'text' in read ? read.text : null
    },
    replace: options.replace === true,
  })
  const texts = new Map(plan.changes.map(({ path: record, text }) => [record, text]))
  const after = loadRecords(content, day, { changed: texts })
  const faults = [...file.faults, ...plan.faults, ...differing(plan, options), ...ofRecords(plan, after)]
  tellFaults(file, faults, options)
  if (faults.some(({ severity }) => severity === 'error')) {
    process.stderr.write(
      `${countWords(faults.filter(({ severity }) => severity === 'error').length, 'error')}. Nothing was written.\n`,
    )
    return EXIT.failed
  }
  tellOthers(before, after)
  tellPlan(plan, after, options)
  if (plan.changes.length === 0) {
    process.stdout.write(
      plan.rows === 0
        ? 'The file gives no row.\n'
        : 'Everything in the file is on record already: nothing is to do.\n',
    )
    return EXIT.well
  }
  if (options.write !== true) {
    process.stdout.write('Nothing was written yet: --write writes these records.\n')
    return EXIT.well
  }
  writeTogether(content, plan.changes)
  process.stdout.write(`${countWords(plan.changes.length, 'record')} written.\n`)
  return EXIT.well
}

function differing({ differences }: ImportPlan, { replace }: ImportOptions): ImportFault[] {
  const faults = differences.map(differenceFault)
  return replace === true
    ? faults.map((fault) => ({ ...fault, severity: 'note', mend: 'what the file says is written' }))
    : faults
}

/** Faults of the records that the import would write, at the cells that they come from. */
function ofRecords({ changes }: ImportPlan, { diagnostics }: LoadedContent): ImportFault[] {
  const byPath = new Map(changes.map((change) => [change.path, change]))
  return diagnostics.flatMap((diagnostic) => {
    const change = byPath.get(diagnostic.file)
    const isTold = change === undefined || change.isPartial || diagnostic.severity !== 'error'
    return isTold ? [] : [recordFault(change, diagnostic)]
  })
}

/** Notes beyond this are counted, not shown. */
const MOST_NOTES = 20

function tellFaults(
  { name, sheets }: SheetFile,
  faults: readonly ImportFault[],
  { all }: ImportOptions,
): void {
  const ordered = inFileOrder(
    faults,
    sheets.map((sheet) => sheet.name),
  )
  const causes = all === true ? ordered.map((fault): AlikeFaults => [fault]) : alikeFaults(ordered)
  const [errors, notes] = [
    causes.filter(([{ severity }]) => severity === 'error'),
    causes.filter(([{ severity }]) => severity === 'note'),
  ]
  const most = all === true ? notes.length : MOST_NOTES
  const shown = [...errors, ...notes.slice(0, most)].map((alike) => alikeFaultsText(name, alike))
  const rest = notes.length - most
  const lines = rest <= 0 ? shown : [...shown, `and ${countWords(rest, 'note')} more; --all shows each`]
  if (0 < lines.length) process.stderr.write(`${lines.join('\n')}\n`)
}

/** Records that had faults before have them still; the import is not to blame. */
function tellOthers(before: LoadedContent, after: LoadedContent): void {
  const errors = after.diagnostics.filter(({ severity }) => severity === 'error').length
  if (errors === 0) return
  const known = before.diagnostics.filter(({ severity }) => severity === 'error').length
  process.stderr.write(
    `${countWords(errors, 'error')} in other records${errors <= known ? ', as before' : ''}: ${commandLine('check')} tells them.\n`,
  )
}

function tellPlan(
  { changes, rows, leftOut, unchanged }: ImportPlan,
  { records }: LoadedContent,
  options: ImportOptions,
): void {
  const edition = hasSite(records) ? computeEdition(records, { program: PROGRAM, today: today() }) : null
  const left = leftOut === 0 ? '' : `, ${leftOut} left out by the map`
  process.stdout.write(`${countWords(rows, 'row')} read${left}.\n`)
  for (const change of changes) process.stdout.write(`${changeLines(change, edition, options).join('\n')}\n`)
  if (0 < unchanged) process.stdout.write(`${countWords(unchanged, 'record')} unchanged.\n`)
}

function changeLines(change: RecordChange, edition: Edition | null, options: ImportOptions): string[] {
  const { added, replaced } = change.draft
  const parts = Map.groupBy(added, (pointer) => pointer.split('/')[1] ?? '')
  const what = [...parts].map(([part, pointers]) => partWords(part, pointers)).join(', ')
  const isNew = change.before === null
  const said = [
    ...(what === '' ? [] : [isNew ? what : `adds ${what}`]),
    ...(replaced.length === 0 ? [] : [`changes ${replaced.map(pathWords).join('; ')}`]),
  ]
  const head = `${isNew ? 'new ' : ''}${change.kind} ${change.id}: ${said.join('; ')}`
  return [head, ...verdictLines(change, edition), ...(options.records === true ? recordLines(change) : [])]
}

/** A part of the record with how many items of its list there are values for. */
function partWords(part: string, pointers: readonly string[]): string {
  const items = new Set(
    pointers.map((pointer) => pointer.split('/')[2]).filter((key) => /^\d+$/.test(key ?? '')),
  )
  return items.size === 0 ? part : `${part} (${items.size})`
}

function verdictLines({ kind, id }: RecordChange, edition: Edition | null): string[] {
  const lot = kind === 'lot' ? edition?.lots.get(id) : undefined
  if (edition === null || lot === undefined) return []
  return lot.outcomes.map(
    ({ criterion }) => `  ${criterion}: ${plainSpaces(standingOf(edition, lot, criterion).text)}`,
  )
}

/** The record's text, lines that are not on record marked. */
function recordLines({ text, before }: RecordChange): string[] {
  const known = new Set(before?.split(/\r?\n/))
  return text
    .trimEnd()
    .split(/\r?\n/)
    .map((line) => `  ${before !== null && !known.has(line) && line !== '' ? '+' : ' '} ${line}`)
}
