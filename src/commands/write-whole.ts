/** Writes files whole or not at all. */
import { mkdirSync, renameSync, statSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { discard, syncFolder, writeOnDisk } from './durable.ts'
import { CommandFailure, EXIT } from './program.ts'
import { faultWords } from './system-faults.ts'

export interface WholeFile {
  readonly path: string
  /** One piece after the other where they are several. */
  readonly content: string | Uint8Array | Iterable<string>
}

/**
 * Writes beside the file and renames, each step on the disk before the next.
 * @throws CommandFailure with the given fix; the file is then as it was before
 */
export function writeWhole(path: string, content: WholeFile['content'], mend: string): void {
  writeFilesWhole([{ path, content }], mend)
}

/**
 * Writes files that belong together: each beside its place, then the renamings, so that a full disk changes none.
 * @throws CommandFailure with the given fix
 */
export function writeFilesWhole(files: readonly WholeFile[], mend: string): void {
  try {
    for (const { path, content } of files)
      telling(path, mend, () => {
        mkdirSync(dirname(path), { recursive: true })
        writeOnDisk(besideOf(path), content, statSync(path, { throwIfNoEntry: false })?.mode)
      })
    for (const { path } of files) telling(path, mend, () => renameSync(besideOf(path), path))
  } catch (error) {
    for (const { path } of files) discard(besideOf(path))
    throw error
  }
  for (const folder of new Set(files.map(({ path }) => dirname(path)))) syncFolder(folder)
}

function besideOf(path: string): string {
  return join(dirname(path), `.${basename(path)}.next`)
}

function telling(path: string, mend: string, step: () => void): void {
  try {
    step()
  } catch (error) {
    throw new CommandFailure(`${path} cannot be written: ${faultWords(error)}.`, EXIT.failed, mend)
  }
}
