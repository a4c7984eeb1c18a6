/** Reads a spoiled record among sound ones, without the disk, and says what a reader did that it never may. */
import { assemble, noFiles, type ReadFiles } from '../../src/records/checks/assemble.ts'
import type { Diagnostic } from '../../src/records/diagnostics/diagnostic.ts'
import { diagnosticText } from '../../src/records/diagnostics/diagnostic-text.ts'
import { type FileReport, fileReport } from '../../src/records/diagnostics/report.ts'
import { loadText } from '../../src/records/checks/load-record.ts'
import { momentOfDay } from '../../src/core/measure/moment.ts'
import type { Records } from '../../src/records/records.ts'
import type { CorpusRecord } from './corpus.ts'
import type { SpoiledRecord } from './spoiled-record.ts'

/** Milliseconds of computing that one case may take; the first of a process makes the readers ready, too. */
const LONGEST = 5000

/** 2026-06-01: a fixed day, after every date of the records. */
export const TODAY = momentOfDay(20_605)

export interface Reading {
  readonly diagnostics: readonly Diagnostic[]
  /** Absent where the record did not come so far, or where reading ended in an exception. */
  readonly records?: Records
  /** What a reader never may do; empty where all is well. */
  readonly faults: readonly string[]
}

/** How much of a corpus stands beside the spoiled record. */
export type Beside = 'what it refers to' | 'enough to judge'

export function readSpoiled(spoiled: SpoiledRecord, beside: Beside): Reading {
  const diagnostics: Diagnostic[] = []
  const begun = process.cpuUsage()
  try {
    const files = readAll(spoiled, beside, diagnostics)
    const isRead = isLoaded(files, spoiled.record)
    // Beside a record that was left out the others are read as ever.
    const records = isRead || beside === 'enough to judge' ? assemble(files, TODAY) : undefined
    const faults = [
      ...faultsOf(spoiled, diagnostics),
      ...(isRead || diagnostics.some(tellsOfLoss) ? [] : ['the record is left out without a diagnostic']),
      ...(records === undefined ? [] : droppedFaults(records, spoiled.record, diagnostics)),
      ...slowness(begun),
    ]
    return { diagnostics, ...(records && { records }), faults }
  } catch (error) {
    return { diagnostics, faults: [traceOf(error)] }
  }
}

/** An exception in a form that is equal for equal causes. */
export function traceOf(error: unknown): string {
  if (!(error instanceof Error)) return `threw ${String(error)}`
  const at = (error.stack ?? '').split('\n').find((line) => line.includes('/src/')) ?? ''
  return `threw ${error.name}: ${error.message.split('\n')[0]} ${at.trim().replace(/\(?\S*\/src\//, 'src/')}`
}

/** @param begun when the case was begun; what others compute on the machine is not counted */
export function slowness(begun: NodeJS.CpuUsage): string[] {
  const { user, system } = process.cpuUsage(begun)
  const took = (user + system) / 1000
  return took < LONGEST ? [] : [`took ${Math.round(took)} ms`]
}

/** A sound record once read: nothing changes it, so only where its faults go is new for each case. */
const soundValues = new WeakMap<CorpusRecord, unknown>()

function readAll(spoiled: SpoiledRecord, beside: Beside, diagnostics: Diagnostic[]): ReadFiles {
  const { corpus, record, text } = spoiled
  const files = noFiles('nowhere')
  const reached = beside === 'enough to judge' ? corpus.aroundOf(record.path) : corpus.referredTo(record.path)
  for (const other of corpus.records) {
    files.ids[other.name.kind].add(other.name.id)
    if (other === record) loadText(files, other.name, { path: other.path, text }, diagnostics)
    else if (reached.has(other.path)) putSound(files, other, diagnostics)
  }
  return files
}

function putSound(files: ReadFiles, sound: CorpusRecord, diagnostics: Diagnostic[]): void {
  const { kind, id } = sound.name
  if (kind === 'method') return
  const loaded = files.loaded[kind] as Map<string, { record: unknown; report: FileReport }>
  const known = soundValues.get(sound)
  if (known === undefined) {
    loadText(files, sound.name, sound, diagnostics)
    soundValues.set(sound, loaded.get(id)?.record)
  } else loaded.set(id, { record: known, report: fileReport(sound.path, sound.text, diagnostics) })
}

function isLoaded(files: ReadFiles, { name }: CorpusRecord): boolean {
  return name.kind === 'method'
    ? files.methods.some(({ id }) => id === name.id)
    : (files.loaded[name.kind] as ReadonlyMap<string, unknown>).has(name.id)
}

/** A record that nothing is written into yet is told in a warning. */
const tellsOfLoss = ({ severity, message }: Diagnostic) =>
  severity === 'error' || message.endsWith('so it is left out')

const hasError = (diagnostics: readonly Diagnostic[]) =>
  diagnostics.some(({ severity }) => severity === 'error')

/** Where the records of a kind stand; a criterion's compiled form has only what it could be compiled from. */
function droppedFaults(
  records: Records,
  { name, path }: CorpusRecord,
  diagnostics: readonly Diagnostic[],
): string[] {
  if (name.kind === 'site' || name.kind === 'method') return []
  const kept = {
    producer: [records.producers],
    laboratory: [records.laboratories],
    source: [records.sources],
    condition: [records.conditions, records.announcedConditions],
    control: [records.controls],
    criterion: [records.criteria],
    lot: [records.lots],
    study: [records.studies],
  }[name.kind].some((map: ReadonlyMap<string, unknown>) => map.has(name.id))
  const told = hasError(diagnostics.filter(({ file }) => file === path))
  return kept || told ? [] : ['the record is dropped without a diagnostic of its file']
}

/** Made by a program that forgot a case; as part of a word of the record they are no fault. */
const SLIPS = /\bundefined\b|\bNaN\b|\[object |\bInfinity\b|: …$/

// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the signs that must not reach a terminal.
const STEERING = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u200e\u200f\u2028-\u202e\u2066-\u2069]/

function faultsOf({ text, record }: SpoiledRecord, diagnostics: readonly Diagnostic[]): string[] {
  return diagnostics.flatMap((diagnostic) => {
    const { code, file, line, column, message, mend } = diagnostic
    const fault = (what: string) => `${code}: ${what}`
    const own = file === record.path
    const printed = diagnosticText(diagnostic, () => (own ? text : undefined))
    const lines = own ? text.split('\n').length : Number.MAX_SAFE_INTEGER
    const source = own ? (text.split('\n')[line - 1] ?? '') : ''
    return [
      ...(file === '' ? [fault('names no file')] : []),
      ...(Number.isInteger(line) && 1 <= line && line <= lines ? [] : [fault(`stands at line ${line}`)]),
      ...(Number.isInteger(column) && 1 <= column ? [] : [fault(`stands at column ${column}`)]),
      ...(own && source.length + 1 < column ? [fault(`stands at column ${column} of ${source.length}`)] : []),
      ...(message.trim() === '' ? [fault('says nothing')] : []),
      ...(mend.trim() === '' ? [fault(`offers no fix: ${message}`)] : []),
      ...(SLIPS.test(withoutWords(`${message} ${mend}`, text)) ? [fault(`slips: ${message} / ${mend}`)] : []),
      ...(STEERING.test(printed) ? [fault('prints a control character')] : []),
      ...(4 + 3 * (diagnostic.related?.length ?? 0) < printed.split('\n').length
        ? [fault('is broken over lines')]
        : []),
      ...(1500 < printed.length ? [fault(`is ${printed.length} characters long`)] : []),
    ]
  })
}

/** A message without the slips that the record itself spells. */
function withoutWords(message: string, text: string): string {
  return ['undefined', 'NaN', 'Infinity', '[object '].reduce(
    (so, word) => (text.includes(word) ? so.replaceAll(word, '') : so),
    message,
  )
}
