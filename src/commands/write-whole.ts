/** Writes a file whole or not at all. */
import { mkdirSync, renameSync, statSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { discard, syncFolder, writeOnDisk } from './durable.ts'
import { CommandFailure, EXIT } from './program.ts'
import { faultWords } from './system-faults.ts'

/**
 * Writes beside the file and renames, each step on the disk before the next.
 * @throws CommandFailure with the given fix; the file is then as it was before
 */
export function writeWhole(path: string, text: string, mend: string): void {
  const next = join(dirname(path), `.${basename(path)}.next`)
  try {
    mkdirSync(dirname(path), { recursive: true })
    writeOnDisk(next, text, statSync(path, { throwIfNoEntry: false })?.mode)
    renameSync(next, path)
  } catch (error) {
    discard(next)
    throw new CommandFailure(`${path} cannot be written: ${faultWords(error)}.`, EXIT.failed, mend)
  }
  syncFolder(dirname(path))
}
