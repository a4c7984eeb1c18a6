/** Finishes an issue that was interrupted between a document and its line, or removes what it left half written. */
import { existsSync, lstatSync } from 'node:fs'
import { join } from 'node:path'
import { momentIn } from '../core/measure/moment.ts'
import { revisionLine } from '../records/edit/revision-line.ts'
import { documentAt, documentPath, listIssued, readIssued, readPart } from '../records/files.ts'
import { digestOf } from '../records/issued/digest.ts'
import type { IssuedHead } from '../records/issued/issued-head.ts'
import { withRevealed } from '../records/issued/private-part.ts'
import { type IssuedReader, issuedReader } from '../records/issued/read-document.ts'
import { hasSite } from '../records/load.ts'
import type { Records } from '../records/records.ts'
import type { Lot } from '../records/schema/loaded-records.ts'
import { countWords } from '../words/numbers.ts'
import { CommandFailure, commandLine, EXIT } from './program.ts'
import { printDiagnostics, readContent } from './read-content.ts'
import { sweepUnused } from './sweep-unused.ts'
import { addLine, type RecordLine, removeFile } from './write-revision.ts'

/** A document that its lot's record has no line for. */
interface LeftDocument {
  readonly lot: string
  readonly number: number
}

interface Step extends LeftDocument {
  /** The line that is still to be written; null for a document that is half written and is removed. */
  readonly line: RecordLine | null
  /** What is told of it. */
  readonly told: string
}

/** The revision that a document follows. */
type Earlier = { readonly number: number; readonly digest: string } | undefined

/**
 * Everything is looked at before anything is written: where one document cannot be finished, nothing changes.
 * @returns the exit status
 * @throws CommandFailure for a document that is whole and does not follow what is on record
 */
export function resumeIssue(contentDir: string): number {
  const content = readContent(contentDir)
  const { records } = content
  const left = leftDocuments(records)
  const unread = unreadLots(records, left)
  const hindering = hasSite(records)
    ? content.diagnostics.filter(
        ({ code, severity, file }) =>
          severity === 'error' && code !== 'issued-unrecorded' && file.startsWith('issued/'),
      )
    : content.diagnostics
  if (hindering.length > 0) {
    printDiagnostics({ ...content, diagnostics: hindering, errors: hindering.length })
    throw new CommandFailure('Nothing was resumed.', EXIT.failed)
  }
  const steps = stepsFor(
    records,
    left.filter(({ lot }) => !unread.includes(lot)),
  )
  for (const { lot, line } of steps) if (line !== null) addLine(contentDir, lot, line)
  for (const { line, ...document } of steps) if (line === null) removeFile(join(contentDir, fileOf(document)))
  const removed = sweepUnused(contentDir)
  const told = [
    ...steps.map((step) => step.told),
    ...(removed === 0 ? [] : [`${countWords(removed, 'file')} that no issued document refers to removed.`]),
  ]
  process.stdout.write(
    told.length === 0 ? 'Nothing was left behind.\n' : told.map((line) => `${line}\n`).join(''),
  )
  for (const lot of unread)
    process.stderr.write(
      `lots/${lot}.yaml has a fault, so whether an issue of that lot was interrupted is not known.\nfix: ${commandLine('check')} shows the fault; mend it, then resume again\n`,
    )
  return unread.length === 0 ? EXIT.well : EXIT.failed
}

/** In the order of revisions. */
function leftDocuments({ contentDir, lots }: Records): LeftDocument[] {
  return listIssued(contentDir)
    .flatMap((path) => documentAt(path) ?? [])
    .filter(({ lot, number }) => number >= (lots.get(lot)?.revisions?.length ?? 0))
    .sort((a, b) => a.number - b.number)
}

/** Lots with documents whose records cannot be read: which of these documents have a line is not known. */
function unreadLots({ contentDir, lots }: Records, left: readonly LeftDocument[]): string[] {
  return [...new Set(left.map(({ lot }) => lot))].filter(
    (lot) => !lots.has(lot) && existsSync(join(contentDir, `lots/${lot}.yaml`)),
  )
}

/** Lot by lot in the order of revisions: each line follows the one before it. */
function stepsFor({ contentDir, lots }: Records, left: readonly LeftDocument[]): Step[] {
  const reader = issuedReader(contentDir)
  return [...Map.groupBy(left, ({ lot }) => lot)].flatMap(([lot, documents]) => {
    const record = lots.get(lot)
    if (record === undefined) {
      const [first = { lot, number: 0 }] = documents
      throw unfinishable(first, `the record lots/${lot}.yaml is missing`)
    }
    let earlier: Earlier = record.revisions?.at(-1)
    return documents.map((document) => {
      const step = stepFor({ contentDir, reader, record, earlier }, document)
      if (step.line !== null) earlier = { number: document.number, digest: step.line.digest }
      return step
    })
  })
}

interface Resuming {
  readonly contentDir: string
  readonly reader: IssuedReader
  readonly record: Lot
  readonly earlier: Earlier
}

function stepFor(resuming: Resuming, document: LeftDocument): Step {
  const { contentDir } = resuming
  const { lot, number } = document
  const bytes = readIssued(contentDir, lot, number)
  if (bytes === null) throw unfinishable(document, unreadReason(join(contentDir, fileOf(document))))
  if (!isJson(bytes)) {
    const told = `${lot}: a half-written document of revision ${number} (${countWords(bytes.length, 'byte')}) was removed.`
    return { ...document, line: null, told }
  }
  const line = lineFor(resuming, document, digestOf(bytes))
  return { ...document, line, told: `${lot}: revision ${number} is finished.` }
}

function fileOf({ lot, number }: LeftDocument): string {
  return `issued/${documentPath(lot, number)}`
}

function unfinishable(document: LeftDocument, reason: string): CommandFailure {
  return new CommandFailure(
    `${fileOf(document)} cannot be finished: ${reason}. Nothing was changed.`,
    EXIT.failed,
    'restore issued/ and the lot’s record from version control or a backup',
  )
}

function unreadReason(path: string): string {
  return lstatSync(path, { throwIfNoEntry: false })?.isSymbolicLink() === true
    ? 'it is a link, which is not followed'
    : 'it cannot be read'
}

function isJson(bytes: Buffer): boolean {
  try {
    JSON.parse(bytes.toString('utf8'))
    return true
  } catch {
    return false
  }
}

/**
 * The line that the interrupted issue would have written.
 * @throws CommandFailure where the document is not the lot's next revision, or a part of it is lost
 */
function lineFor({ contentDir, reader, record, earlier }: Resuming, own: LeftDocument, digest: string) {
  const lost = reader.parts(own.lot, own.number).find((part) => !isWhole(contentDir, part))
  if (lost !== undefined)
    throw unfinishable(own, `its part issued/parts/${lost}.json is missing or was altered`)
  const head = (reader.document(own.lot, own.number)?.document ?? {}) as Partial<IssuedHead>
  const misfit = misfitOf(head, own, { record, earlier })
  if (misfit !== null) throw unfinishable(own, misfit)
  const part = head.private === undefined ? null : reader.privatePart(head.private)
  const revealed = part === null ? {} : withRevealed(head, part, ['persons', 'drafts'])
  const { by, function: duty, reason, issued, state, replacedBy } = revealed
  const date = momentIn(issued ?? '')
  if (by === undefined || duty === undefined || reason === undefined || date === null)
    throw unfinishable(own, 'it does not say who issued it, when and why')
  const line = {
    revision: own.number,
    date,
    by,
    function: duty,
    reason,
    withdrawn: state === 'withdrawn',
    replacedBy: replacedBy ?? null,
  }
  return { digest, text: revisionLine(line, digest) }
}

function isWhole(contentDir: string, part: string): boolean {
  const bytes = readPart(contentDir, part)
  return bytes !== null && digestOf(bytes) === part
}

/** Why a document is not the next revision of the lot; null where it is. */
function misfitOf(
  head: Partial<IssuedHead>,
  { lot, number }: LeftDocument,
  { record, earlier }: Pick<Resuming, 'record' | 'earlier'>,
): string | null {
  if (head.format !== 2) return 'it is not an issued document of format 2'
  // A lot that was renamed keeps the documents of its earlier id.
  if (![lot, ...(record.formerly ?? [])].includes(head.certificate ?? ''))
    return `it is a document of ${head.certificate}`
  if (head.revision !== number) return `it says that it is revision ${head.revision}`
  if (number !== (earlier?.number ?? -1) + 1) return `revision ${number - 1} is not on record`
  if (head.replaces?.digest !== earlier?.digest) return 'it does not follow the revision before it'
  return null
}
