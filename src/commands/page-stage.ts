/**
 * The folder that Astro builds pages in. Astro runs its own intermediate program from there and must find the
 * project's packages, so it lies inside the project; each build has one of its own, with its owner's name in it,
 * so that what a killed build left behind is known as such.
 */
import { cpSync, mkdirSync, mkdtempSync, readdirSync, renameSync, rmSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { isAbandoned, writeOwner } from './folder-lock.ts'
import { ROOT } from './program.ts'

const PARENT = join(ROOT, 'node_modules')
const PREFIX = '.pages-'
const OWNER = 'owner'

/** A stage without an owner's name is of an earlier version, or made this moment. */
const MADE_THIS_MOMENT_MS = 3_600_000

export interface PageStage {
  /** For Astro, which empties it first; its permissions are those of any new folder. */
  readonly site: string
  readonly remove: () => void
}

/** Sweeps what killed builds left, and makes a new stage. */
export function makeStage(): PageStage {
  for (const name of readdirSync(PARENT)) if (name.startsWith(PREFIX)) sweep(join(PARENT, name))
  const folder = mkdtempSync(join(PARENT, PREFIX))
  writeOwner(join(folder, OWNER))
  const site = join(folder, 'site')
  mkdirSync(site)
  return { site, remove: () => rmSync(folder, { recursive: true, force: true }) }
}

function sweep(folder: string): void {
  const owner = join(folder, OWNER)
  const made = statSync(folder, { throwIfNoEntry: false })
  if (made === undefined) return
  const ownerless = statSync(owner, { throwIfNoEntry: false }) === undefined
  if (ownerless ? made.mtimeMs + MADE_THIS_MOMENT_MS < Date.now() : isAbandoned(owner))
    rmSync(folder, { recursive: true, force: true })
}

/** Moves all that lies in one folder into another: by renaming, by copying where they lie on different disks. */
export function moveEntries(from: string, to: string): void {
  for (const name of readdirSync(from)) {
    try {
      renameSync(join(from, name), join(to, name))
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'EXDEV') throw error
      cpSync(join(from, name), join(to, name), { recursive: true })
    }
  }
}
