/** Reads manifest.json of a site, and tells which files of a folder it does not know. */
import { lstatSync, readdirSync, readFileSync } from 'node:fs'
import { join, relative, sep } from 'node:path'
import type { Manifest } from '../edition/writers/manifest.ts'
import { validatorOf } from '../records/schema/schemas.ts'
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
 * Files of a site's folder that its build did not write.
 * @param keep names in the folder that are the owner's
 */
export function foreignFiles(
  folder: string,
  { files }: Pick<Manifest, 'files'>,
  keep: readonly string[],
): string[] {
  const own = new Set([...keep, MARKER, MANIFEST])
  return filesBelow(folder, own).filter(
    (path) => !Object.hasOwn(files, path) && !STREWN.includes(path.slice(path.lastIndexOf('/') + 1)),
  )
}

/** Everything that is no folder, by path with forward slashes. @param without names in the folder itself */
function filesBelow(folder: string, without: ReadonlySet<string> = new Set()): string[] {
  return readdirSync(folder, { withFileTypes: true })
    .filter((entry) => !without.has(entry.name))
    .flatMap((entry) => {
      if (!entry.isDirectory()) return [entry.name]
      const below = readdirSync(join(folder, entry.name), { recursive: true, withFileTypes: true })
      return below
        .filter((child) => !child.isDirectory())
        .map((child) => relative(folder, join(child.parentPath, child.name)).split(sep).join('/'))
    })
}
