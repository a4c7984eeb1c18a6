/** Writes new files, all of them or none, and never over one that is there. */
import { existsSync, mkdirSync, readdirSync, renameSync, rmdirSync, rmSync, writeFileSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import type { NewFile } from '../scaffold/new-file.ts'
import { discard, syncFolder, syncTree } from './durable.ts'
import { withLock } from './folder-lock.ts'
import { onInterruption } from './interruption.ts'
import { CommandFailure, EXIT } from './program.ts'
import { faultWords } from './system-faults.ts'
import { writeWhole } from './write-whole.ts'

export const LOOK = 'check the permissions, the free space and what is in its place'

/**
 * Writes into a content folder that is there.
 * @throws CommandFailure where a file is there already (wrong use), or one cannot be written; none of them is there then
 */
export function writeNewFiles(contentDir: string, files: readonly NewFile[]): void {
  withLock(contentDir, () => {
    for (const { path } of files) refuseExisting(contentDir, path)
    const written: string[] = []
    try {
      for (const { path, text } of files) {
        writeWhole(join(contentDir, path), text, LOOK)
        written.push(join(contentDir, path))
      }
    } catch (error) {
      written.forEach(discard)
      throw error
    }
  })
}

/** Names that differ by case alone are one file on many systems. */
function refuseExisting(contentDir: string, path: string): void {
  const folder = join(contentDir, dirname(path))
  const name = basename(path).toLowerCase()
  const there = existsSync(folder)
    ? readdirSync(folder).find((other) => other.toLowerCase() === name)
    : undefined
  if (there !== undefined)
    throw new CommandFailure(
      `${join(folder, there)} is there already; nothing was written.`,
      EXIT.wrongUse,
      'choose another id, or edit that file',
    )
}

/**
 * Makes a folder with these files: beside its place, then renamed.
 * @throws CommandFailure where it is there and not empty (wrong use), or cannot be written
 */
export async function writeNewFolder(folder: string, files: readonly NewFile[]): Promise<void> {
  if (existsSync(folder) && !isEmptyFolder(folder))
    throw new CommandFailure(
      `${folder} is there already and not empty; nothing was written.`,
      EXIT.wrongUse,
      'choose another name for the site',
    )
  const next = join(dirname(folder), `.${basename(folder)}.new-${process.pid}`)
  const clear = () => rmSync(next, { recursive: true, force: true })
  const watched = onInterruption(clear)
  try {
    makeFolder(next)
    for (const { path, text } of files) {
      mkdirSync(dirname(join(next, path)), { recursive: true })
      writeFileSync(join(next, path), text, { flag: 'wx' })
    }
    await syncTree(next)
    if (existsSync(folder)) rmdirSync(folder)
    renameSync(next, folder)
    syncFolder(dirname(folder))
  } catch (error) {
    clear()
    throw new CommandFailure(`${folder} cannot be written: ${faultWords(error)}.`, EXIT.failed, LOOK)
  } finally {
    watched()
  }
}

/**
 * Makes a folder and what it lies in, one by one: Node.js goes on for ever where a file system says of each new folder
 * that its parent is missing, as /proc does.
 */
function makeFolder(folder: string): void {
  const missing: string[] = []
  for (let at = folder; !existsSync(at); at = dirname(at)) missing.unshift(at)
  for (const at of missing) mkdirSync(at)
}

function isEmptyFolder(folder: string): boolean {
  try {
    return readdirSync(folder).length === 0
  } catch {
    return false
  }
}
