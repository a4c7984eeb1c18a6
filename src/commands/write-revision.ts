/** Writes a revision into a content folder: parts, then the document, then the line in the lot's record. */
import {
  closeSync,
  existsSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readFileSync,
  renameSync,
  writeFileSync,
} from 'node:fs'
import { dirname, join } from 'node:path'
import type { IssuedRevision } from '../edition/certificate/issue.ts'
import { fileReport } from '../records/diagnostics/report.ts'
import { withRevisionLine } from '../records/edit/revision-line.ts'
import type { Lot } from '../records/schema/loaded-records.ts'
import { loadYaml } from '../records/yaml/load-yaml.ts'
import { CommandFailure, EXIT } from './program.ts'

/**
 * Each file is written whole or not at all, and in an order in which nothing refers to what is not there yet: an
 * end at any moment leaves the record as it was or with its new revision.
 * @throws CommandFailure where the record's text does not take the line; nothing is written then
 */
export function writeRevision(contentDir: string, lot: string, issued: IssuedRevision): void {
  const recordFile = join(contentDir, 'lots', `${lot}.yaml`)
  const next = withRevisionLine(readFileSync(recordFile, 'utf8'), issued.recordLine)
  // Read back before anything is written: a record that the line does not fit into stays as it is.
  const record = loadYaml('lot', next, fileReport(recordFile, next, [])) as Lot | undefined
  if (record?.revisions?.at(-1)?.digest !== issued.digest)
    throw new CommandFailure(
      `The revision cannot be added to ${recordFile}, which is as before.`,
      EXIT.failed,
      'write revisions: as a list with one line a revision',
    )
  for (const [digest, text] of issued.parts) {
    const path = join(contentDir, 'issued', 'parts', `${digest}.json`)
    if (!existsSync(path)) writeWhole(path, text)
  }
  writeWhole(join(contentDir, 'issued', lot, `${issued.document.revision}.json`), issued.text)
  writeWhole(recordFile, next)
}

/** Writes beside the file and renames, each step on the disk before the next. */
function writeWhole(path: string, text: string): void {
  mkdirSync(dirname(path), { recursive: true })
  const next = `${path}.next`
  const file = openSync(next, 'w')
  try {
    writeFileSync(file, text)
    fsyncSync(file)
  } finally {
    closeSync(file)
  }
  renameSync(next, path)
  syncFolder(dirname(path))
}

/** A renaming is on the disk when its folder is; some systems do not open folders. */
function syncFolder(path: string): void {
  try {
    const folder = openSync(path, 'r')
    try {
      fsyncSync(folder)
    } finally {
      closeSync(folder)
    }
  } catch {
    // Nothing to do: the file itself is whole.
  }
}
