/** Reads manifest.json of a site, and tells which files of a folder it does not know. */
import { lstatSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Manifest } from '../edition/writers/manifest.ts'
import { validatorOf } from '../records/schema/schemas.ts'
import { filesOf, type FolderTree } from './folder-tree.ts'
import { MARKER } from './output-marker.ts'
import { CommandFailure, EXIT } from './program.ts'

export const MANIFEST = 'manifest.json'

/** What systems strew into folders that somebody looked at; nobody misses it. */
const STREWN = ['.DS_Store', 'Thumbs.db', 'desktop.ini']

/**
 * The manifest of a site's folder; null where it has none.
 * @throws CommandFailure for one that cannot be read, so that nothing passes for want of it
 */
export function readManifest(folder: string): Manifest | null {
  const path = join(folder, MANIFEST)
  const status = lstatSync(path, { throwIfNoEntry: false })
  if (status === undefined) return null
  const value = status.isFile() ? parsed(readFileSync(path, 'utf8')) : undefined
  if (isManifest(value)) return value
  throw new CommandFailure(
    `${path} is no manifest of a site, so that nothing can be held against it.`,
    EXIT.failed,
    'restore the site from a backup, or build into another folder and give a good copy with --against DIR',
  )
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text) as unknown
  } catch {
    return undefined
  }
}

function isManifest(value: unknown): value is Manifest {
  return validatorOf('manifest')(value)
}

/**
 * Files of a site's folder that its build did not write, in code-unit order.
 * @param tree of the folder
 * @param keep names in the folder that are the owner's
 */
export function foreignFiles(
  tree: FolderTree,
  { files }: Pick<Manifest, 'files'>,
  keep: readonly string[],
): string[] {
  return filesOf(tree, new Set([...keep, MARKER, MANIFEST]))
    .filter((path) => !Object.hasOwn(files, path) && !STREWN.includes(path.slice(path.lastIndexOf('/') + 1)))
    .sort()
}
