/** One file of records, read from the disk or from a text, into the records that are being assembled. */
import { offsetMinutes } from '../../core/measure/moment.ts'
import type { ReadFiles } from './assemble.ts'
import type { Diagnostic } from '../diagnostics/diagnostic.ts'
import { fileReport } from '../diagnostics/report.ts'
import { type FileFault, fileFault } from '../diagnostics/unread-files.ts'
import { type TextFault, UNREADABLE, UNREADABLE_MEND } from '../diagnostics/unreadable-text.ts'
import { fileMark, readText } from '../files.ts'
import type { ReadBefore } from '../read-before.ts'
import type { RecordName } from '../record-path.ts'
import type { SharedValues } from './shared-values.ts'
import { loadYaml } from '../yaml/load-yaml.ts'
import { headingOf, type MethodPage, readMethodPage } from '../yaml/method-page.ts'

export interface Loading {
  readonly files: ReadFiles
  readonly before: ReadBefore
  /** Of all files. */
  readonly values: SharedValues
}

/** A later fault, one beyond the file itself, is placed in its text, which is read again for it: few files have one. */
export function loadFile(
  { files, before, values }: Loading,
  { kind, id }: RecordName,
  path: string,
  diagnostics: Diagnostic[],
): void {
  const mark = fileMark(files.contentDir, path)
  const offset = siteOffset(files)
  const kept = before.of(path, mark === null ? null : `${offset} ${mark}`, () => {
    const told = diagnostics.length
    const read = readNow(files.contentDir, { kind, id }, path, { offset, diagnostics })
    if (kind !== 'method') values.shareIn(read?.value)
    return { value: read, keep: read !== undefined && diagnostics.length === told }
  })
  const text = () => textAt(files.contentDir, path)
  if (kept !== undefined) put(files, { kind, id }, { path, text, ...kept }, diagnostics)
}

/** Nothing can be placed in a file that is gone meanwhile. */
function textAt(contentDir: string, path: string): string {
  const reading = readText(contentDir, path)
  return 'fault' in reading ? '' : reading.text
}

interface Reading {
  readonly offset: number
  readonly diagnostics: Diagnostic[]
}

/** A sound record, and the items of its lists that are no part of it. */
interface ReadRecord {
  readonly value: unknown
  readonly left: readonly string[]
}

/** Undefined for a record with a fault. */
function readNow(
  contentDir: string,
  name: RecordName,
  path: string,
  { offset, diagnostics }: Reading,
): ReadRecord | undefined {
  const reading = readText(contentDir, path)
  if ('fault' in reading) {
    const line = reading.fault === 'not-utf8' ? reading.line : 1
    diagnostics.push({ ...fileFault(path, unreadable(reading.fault)), line })
    return undefined
  }
  const { text } = reading
  return readRecord(name, { path, text }, { offset, diagnostics })
}

/**
 * Reads one record from its text, without the disk.
 * @param files takes the record, or nothing where it has a fault
 * @param diagnostics takes the faults
 */
export function loadText(
  files: ReadFiles,
  { kind, id }: RecordName,
  { path, text }: { readonly path: string; readonly text: string },
  diagnostics: Diagnostic[],
): void {
  const read = readRecord({ kind, id }, { path, text }, { offset: siteOffset(files), diagnostics })
  if (read !== undefined) put(files, { kind, id }, { path, text, ...read }, diagnostics)
}

function siteOffset({ loaded }: ReadFiles): number {
  const offset = loaded.site.get('site')?.record.offset
  return offset === undefined ? 0 : offsetMinutes(offset)
}

/** The record or the method page in a text; undefined where it has a fault. */
function readRecord(
  { kind, id }: RecordName,
  { path, text }: { readonly path: string; readonly text: string },
  { offset, diagnostics }: Reading,
): ReadRecord | undefined {
  const report = fileReport(path, headOf(kind, text), diagnostics)
  const value = kind === 'method' ? readMethodPage(id, text, report) : loadYaml(kind, text, report, offset)
  return value === undefined ? undefined : { value, left: report.leftOut() }
}

function headOf(kind: RecordName['kind'], text: string): string {
  return kind === 'method' ? headingOf(text) : text
}

function put(
  files: ReadFiles,
  { kind, id }: RecordName,
  { path, text, value, left }: ReadRecord & { readonly path: string; readonly text: string | (() => string) },
  diagnostics: Diagnostic[],
): void {
  if (kind === 'method') files.methods.push(value as MethodPage)
  else {
    const report = fileReport(path, text, diagnostics)
    report.leaveOut(left)
    // What a kind's validated and converted value is, its schema says, from which the types are made.
    ;(files.loaded[kind] as Map<string, unknown>).set(id, { record: value, report })
  }
}

function unreadable(fault: TextFault): FileFault {
  return {
    code: 'file-unreadable',
    severity: 'error',
    message: `the file ${UNREADABLE[fault]}`,
    mend: UNREADABLE_MEND[fault],
  }
}
