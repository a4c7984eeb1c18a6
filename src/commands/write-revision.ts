/** Writes a revision into a content folder: parts, then the document, then the line in the lot's record. */
import { existsSync, readFileSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import type { IssuedRevision } from '../edition/certificate/issue.ts'
import { fileReport } from '../records/diagnostics/report.ts'
import { withRevisionLine } from '../records/edit/revision-line.ts'
import { listIssued, partAt } from '../records/files.ts'
import type { Lot } from '../records/schema/loaded-records.ts'
import { loadYaml } from '../records/yaml/load-yaml.ts'
import { discard } from './durable.ts'
import { CommandFailure, commandLine, EXIT } from './program.ts'
import { faultWords } from './system-faults.ts'
import { writeWhole } from './write-whole.ts'

/** A line for `revisions:` and the digest in it. */
export interface RecordLine {
  readonly text: string
  readonly digest: string
}

/**
 * Each file is written whole or not at all, and in an order in which nothing refers to what is not there yet: an
 * end at any moment leaves the record as it was or with its new revision.
 * @throws CommandFailure where the record's text does not take the line, when nothing is written, and where a file
 * cannot be written
 */
export function writeRevision(contentDir: string, lot: string, issued: IssuedRevision): void {
  checkLine(contentDir, lot, issued)
  writeDocument(contentDir, lot, issued)
  addLine(contentDir, lot, { text: issued.recordLine, digest: issued.digest })
}

/** @throws CommandFailure where a file cannot be written; then neither the document nor a part of its own is there */
function writeDocument(contentDir: string, lot: string, { parts, document, text }: IssuedRevision): void {
  const written: string[] = []
  try {
    for (const [digest, part] of parts) {
      const path = join(contentDir, 'issued', 'parts', `${digest}.json`)
      if (existsSync(path)) continue
      writeWhole(path, part, ISSUE_AGAIN)
      written.push(path)
    }
    writeWhole(join(contentDir, 'issued', lot, `${document.revision}.json`), text, ISSUE_AGAIN)
  } catch (error) {
    written.forEach(discard)
    throw error
  }
}

const LOOK = 'check the permissions, the free space and what is in its place'
const ISSUE_AGAIN = `${LOOK}, then issue again`
/** The document is there, and its line is not. */
const RESUME = `${LOOK}, then run ${commandLine('issue', '--resume')}`

/** @throws CommandFailure where a record's text does not take its line */
export function checkLine(contentDir: string, lot: string, { recordLine, digest }: IssuedRevision): void {
  withLine(contentDir, lot, { text: recordLine, digest })
}

/** The same as a value; undefined where it takes it. */
export function lineFault(
  contentDir: string,
  lot: string,
  issued: IssuedRevision,
): CommandFailure | undefined {
  try {
    checkLine(contentDir, lot, issued)
    return undefined
  } catch (error) {
    if (error instanceof CommandFailure) return error
    throw error
  }
}

/** Adds a revision's line to the lot's record. @throws CommandFailure as `writeRevision` */
export function addLine(contentDir: string, lot: string, line: RecordLine): void {
  writeWhole(recordFile(contentDir, lot), withLine(contentDir, lot, line), RESUME)
}

function recordFile(contentDir: string, lot: string): string {
  return join(contentDir, 'lots', `${lot}.yaml`)
}

/** The record's text with the line, read back: a record that the line does not fit into stays as it is. */
function withLine(contentDir: string, lot: string, { text, digest }: RecordLine): string {
  const file = recordFile(contentDir, lot)
  const next = withRevisionLine(readFileSync(file, 'utf8'), text)
  const record = loadYaml('lot', next, fileReport(file, next, [])) as Lot | undefined
  if (record?.revisions?.at(-1)?.digest !== digest)
    throw new CommandFailure(
      `The revision cannot be added to ${file}, which was left as it was.`,
      EXIT.failed,
      'write revisions: as a list with an item on each line, - { number: 0, ... }, and not in [ ]',
    )
  return next
}

/**
 * Removes parts that no document refers to, and what an interrupted issue left half written.
 * @returns how many files were removed
 */
export function sweep(contentDir: string, used: ReadonlySet<string>): number {
  const unused = listIssued(contentDir, { leftovers: true }).filter((path) => {
    const part = partAt(path)
    return path.endsWith('.next') || (part !== undefined && !used.has(part))
  })
  for (const path of unused) removeFile(join(contentDir, 'issued', path))
  return unused.length
}

/** @throws CommandFailure where the file is there and cannot be removed */
export function removeFile(path: string): void {
  try {
    rmSync(path, { force: true })
  } catch (error) {
    throw new CommandFailure(
      `${path} cannot be removed: ${faultWords(error)}.`,
      EXIT.failed,
      `check the permissions, then run ${commandLine('issue', '--resume')}; what was issued stands`,
    )
  }
}
