/**
 * The marker that tells a folder of this program from anybody else's: what edition lies there, and whether it is
 * whole.
 */
import {
  accessSync,
  constants,
  lstatSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmdirSync,
  rmSync,
  writeFileSync,
} from 'node:fs'
import { readdir, rmdir, unlink } from 'node:fs/promises'
import { join } from 'node:path'
import type { Edition } from '../edition/shape/edition.ts'
import type { FolderTree } from './folder-tree.ts'

/** Name of the marker's file. */
export const MARKER = '.certificate-site'

export interface Marker {
  readonly program: string
  readonly audience: Edition['audience']
  /** Only a whole site may take the place of another; one being removed lacks files already. */
  readonly state: 'being-built' | 'whole' | 'being-removed'
}

export function writeMarker(folder: string, marker: Marker): void {
  writeFileSync(join(folder, MARKER), `${JSON.stringify(marker)}\n`)
}

/**
 * The marker of a folder; null where it has none.
 * Note: earlier versions wrote the program's name alone, when the site was whole; which audience it was for they
 * did not say, and what may be public is taken as public.
 */
export function markerOf(folder: string): Marker | null {
  const text = textOf(join(folder, MARKER))
  if (text === null) return null
  try {
    return JSON.parse(text) as Marker
  } catch {
    return { program: text.trim(), audience: 'public', state: 'whole' }
  }
}

function textOf(path: string): string | null {
  try {
    return lstatSync(path).isFile() ? readFileSync(path, 'utf8') : null
  } catch {
    return null
  }
}

/** Whether anything stands at a path, a link that leads nowhere too. */
export function stands(path: string): boolean {
  try {
    return lstatSync(path, { throwIfNoEntry: false }) !== undefined
  } catch (error) {
    // A file stands in the place of its folder.
    if ((error as NodeJS.ErrnoException).code === 'ENOTDIR') return false
    throw error
  }
}

/** Whether a path is a folder itself, no link to one, and either marked or empty. */
export function isOurs(folder: string): boolean {
  if (lstatSync(folder, { throwIfNoEntry: false })?.isDirectory() !== true) return false
  return markerOf(folder) !== null || readdirSync(folder).length === 0
}

/** Makes a marked folder for a site to be built in. */
export function makeMarked(folder: string, marker: Omit<Marker, 'state'>): void {
  mkdirSync(folder)
  writeMarker(folder, { ...marker, state: 'being-built' })
}

/** Removes a folder of ours; the marker goes last, so that a folder half removed is still known as ours. */
export function removeMarked(folder: string): void {
  for (const path of beginRemoval(folder)) rmSync(path, { recursive: true, force: true })
  endRemoval(folder)
}

/** The same, many files at once: on a busy disk each waits for others, and all together take a tenth of the time. */
export async function removeMarkedAtOnce(folder: string): Promise<void> {
  await all(beginRemoval(folder).map(removeAtOnce))
  endRemoval(folder)
}

async function removeAtOnce(path: string): Promise<void> {
  if (lstatSync(path).isDirectory()) await removeFolder(path)
  else await unlink(path)
}

async function removeFolder(path: string): Promise<void> {
  const entries = await readdir(path, { withFileTypes: true })
  await all(
    entries.map((entry) => {
      const own = join(path, entry.name)
      return entry.isDirectory() ? removeFolder(own) : unlink(own)
    }),
  )
  await rmdir(path)
}

/** Waits for the others where one fails. @throws the first fault */
async function all(works: readonly Promise<void>[]): Promise<void> {
  for (const ended of await Promise.allSettled(works)) if (ended.status === 'rejected') throw ended.reason
}

/** Says that it is being removed. @returns paths of what goes before the marker */
function beginRemoval(folder: string): string[] {
  if (!stands(folder)) return []
  const marker = markerOf(folder)
  if (marker !== null) writeMarker(folder, { ...marker, state: 'being-removed' })
  return readdirSync(folder)
    .filter((name) => name !== MARKER)
    .map((name) => join(folder, name))
}

function endRemoval(folder: string): void {
  rmSync(join(folder, MARKER), { force: true })
  if (stands(folder)) rmdirSync(folder)
}

/**
 * Why a folder of ours could not be removed, as far as permissions tell, which deny a folder's change and no file's.
 * @returns the system's refusal; undefined where there is none
 */
export function unremovable(folder: string, tree: FolderTree): NodeJS.ErrnoException | undefined {
  try {
    // One that is empty goes whatever its permissions are.
    for (const [path, { files, folders }] of tree)
      if (files.length + folders.length > 0) accessSync(join(folder, path), constants.W_OK | constants.X_OK)
    // It is written anew before anything goes.
    const marker = join(folder, MARKER)
    if (stands(marker)) accessSync(marker, constants.W_OK)
    return undefined
  } catch (error) {
    return error as NodeJS.ErrnoException
  }
}
