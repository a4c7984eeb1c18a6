/**
 * Writes several records so that all of them land or none: each beside its place first, then a list of what is to be
 * renamed, then the renamings. What a killed command left is finished by the next one where the list stands, and
 * removed where it does not.
 */
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { recordAt } from '../records/record-path.ts'
import { discard, syncFolder, writeOnDisk } from './durable.ts'
import { CommandFailure, EXIT } from './program.ts'
import { faultWords } from './system-faults.ts'

export interface RecordText {
  /** Below the content folder, with forward slashes. */
  readonly path: string
  readonly text: string
}

const LIST = '.import-list'
const ENDING = '.import'

/**
 * @param contentDir the folder, under its lock
 * @throws CommandFailure where a file cannot be written; then none is changed
 */
export function writeTogether(contentDir: string, records: readonly RecordText[]): void {
  const written: string[] = []
  try {
    for (const { path, text } of records) {
      const full = join(contentDir, path)
      mkdirSync(dirname(full), { recursive: true })
      written.push(besideOf(full))
      writeOnDisk(besideOf(full), text, statSync(full, { throwIfNoEntry: false })?.mode)
    }
    for (const folder of new Set(written.map((path) => dirname(path)))) syncFolder(folder)
    const list = join(contentDir, LIST)
    written.push(`${list}.next`)
    writeOnDisk(`${list}.next`, JSON.stringify(records.map(({ path }) => path)))
    // From this renaming on the records are written, whatever happens.
    renameSync(`${list}.next`, list)
    syncFolder(contentDir)
  } catch (error) {
    for (const path of written) discard(path)
    throw new CommandFailure(
      `The records cannot be written: ${faultWords(error)}. None was changed.`,
      EXIT.failed,
      'check the permissions and the free space of the content folder',
    )
  }
  finishWriting(contentDir)
}

/**
 * Finishes what a command left that was killed while it wrote.
 * @param contentDir the folder, under its lock
 * @returns how many records were finished
 * @throws CommandFailure where a renaming fails; run again, it goes on there
 */
export function finishWriting(contentDir: string): number {
  const list = join(contentDir, LIST)
  if (!existsSync(list)) {
    for (const path of leftBeside(contentDir)) discard(path)
    return 0
  }
  // Whatever the list says, nothing but a record's own file is ever renamed.
  const paths = (JSON.parse(readFileSync(list, 'utf8')) as string[]).filter(
    (path) => 'kind' in recordAt(path),
  )
  let finished = 0
  for (const path of paths) {
    const full = join(contentDir, path)
    if (!existsSync(besideOf(full))) continue
    try {
      renameSync(besideOf(full), full)
    } catch (error) {
      throw new CommandFailure(
        `${full} cannot be written: ${faultWords(error)}.`,
        EXIT.failed,
        'check the permissions, then run the import again, which finishes this one',
      )
    }
    finished += 1
  }
  for (const folder of new Set(paths.map((path) => dirname(join(contentDir, path))))) syncFolder(folder)
  rmSync(list, { force: true })
  return finished
}

function besideOf(full: string): string {
  return join(dirname(full), `.${basename(full)}${ENDING}`)
}

/** Texts of a command that was killed before its list stood. */
function leftBeside(contentDir: string): string[] {
  return ['lots', 'controls'].flatMap((folder) => {
    const root = join(contentDir, folder)
    if (!existsSync(root)) return []
    return readdirSync(root, { recursive: true, withFileTypes: true })
      .filter(
        (entry) => entry.isFile() && entry.name.startsWith('.') && entry.name.endsWith(`.yaml${ENDING}`),
      )
      .map((entry) => join(entry.parentPath, entry.name))
  })
}
