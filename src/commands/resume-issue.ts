/** Finishes an issue that was interrupted between a document and its line, or removes what it left. */
import { readFileSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { readMoment } from '../core/measure/moment.ts'
import { revisionLine } from '../records/edit/revision-line.ts'
import { listIssued, readIssued } from '../records/files.ts'
import { digestOf } from '../records/issued/digest.ts'
import type { IssuedHead } from '../records/issued/issued-head.ts'
import { withRevealed } from '../records/issued/private-part.ts'
import { issuedReader } from '../records/issued/read-document.ts'
import type { Lot } from '../records/schema/loaded-records.ts'
import { CommandFailure, EXIT } from './program.ts'
import { printDiagnostics, readContent } from './read-content.ts'
import { usedParts } from './used-parts.ts'
import { addLine, sweep } from './write-revision.ts'

/** @returns the exit status */
export function resumeIssue(contentDir: string): number {
  const content = readContent(contentDir)
  const others = content.diagnostics.filter(
    ({ code, severity }) => severity === 'error' && code !== 'issued-unrecorded',
  )
  if (others.length > 0) {
    printDiagnostics(content)
    throw new CommandFailure('Nothing was resumed.', EXIT.failed)
  }
  const lines = listIssued(contentDir).flatMap((path) => {
    const [, lot = '', number] = /^([^/]+\/[^/]+)\/(\d+)\.json$/.exec(path) ?? []
    const record = content.records.lots.get(lot)
    if (number === undefined || record === undefined) return []
    const count = record.revisions?.length ?? 0
    return Number(number) < count ? [] : [resumeDocument(contentDir, lot, Number(number), record)]
  })
  sweep(contentDir, usedParts(contentDir))
  process.stdout.write(lines.length === 0 ? 'Nothing was left behind.\n' : `${lines.join('\n')}\n`)
  return EXIT.well
}

function resumeDocument(contentDir: string, lot: string, number: number, record: Lot): string {
  const path = join(contentDir, 'issued', lot, `${number}.json`)
  const line = lineFor(contentDir, lot, number, record)
  if (line !== null) {
    addLine(contentDir, lot, line)
    return `${lot}: revision ${number} is finished.`
  }
  const kept = readFileSync(path, 'utf8').length
  rmSync(path)
  return `${lot}: an unfinished document of revision ${number} (${kept} bytes) is removed.`
}

/** The line that an interrupted issue would have written; null where its document is not whole. */
function lineFor(contentDir: string, lot: string, number: number, record: Lot) {
  const bytes = readIssued(contentDir, lot, number)
  const reader = issuedReader(contentDir)
  const stored = reader.document(lot, number)
  if (bytes === null || stored === null) return null
  const head = stored.document as IssuedHead
  const part = reader.privatePart(head.private)
  const last = record.revisions?.at(-1)
  if (
    part === null ||
    head.certificate !== lot ||
    head.revision !== number ||
    head.replaces?.digest !== last?.digest ||
    number !== (last?.number ?? -1) + 1
  )
    return null
  const {
    by,
    function: duty,
    reason,
    issued,
    state,
    replacedBy,
  } = withRevealed(head, part, ['persons', 'drafts'])
  const line = {
    revision: number,
    date: readMoment(issued),
    by,
    function: duty,
    reason,
    withdrawn: state === 'withdrawn',
    replacedBy: replacedBy ?? null,
  }
  const digest = digestOf(bytes)
  return { digest, text: revisionLine(line, digest) }
}
