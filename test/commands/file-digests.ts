/** What lies in a folder, read from the disk. */
import { readdirSync, readFileSync } from 'node:fs'
import { join, relative, sep } from 'node:path'
import { MARKER } from '../../src/commands/output-marker.ts'
import { digestOf } from '../../src/records/issued/digest.ts'

/** Digest of every file below a folder, by path with forward slashes; the marker is none of them. */
export function fileDigests(folder: string): [string, string][] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => !entry.isDirectory())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .filter((path) => path !== MARKER)
    .map((path) => [path, digestOf(readFileSync(join(folder, path)))])
}
