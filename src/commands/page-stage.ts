/**
 * The folder that Astro builds pages in. Astro runs its own intermediate program from there and must find the
 * project's packages, so in a clone it lies inside the project. An installed program writes nothing there: the
 * stage lies in `.puteoli` beside the output, links lead from it to the packages, and it is Astro's root, into
 * which Astro writes its types and caches. Each build has a stage of its own, with its owner's name in it, so that
 * what a killed build left behind is known as such.
 */
import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  rmdirSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { join, sep } from 'node:path'
import { pathToFileURL } from 'node:url'
import type { AstroInlineConfig } from 'astro'
import { isAbandoned, writeOwner } from './folder-lock.ts'
import { CommandFailure, EXIT, INSTALLED, ROOT } from './program.ts'
import { packageFolders } from './program-digest.ts'
import { faultWords } from './system-faults.ts'

const PREFIX = '.pages-'
const OWNER = 'owner'

/** Beside the output: of an installed program its stages, and what may be deleted at any time. */
export const WORK = '.puteoli'

/** A stage without an owner's name is of an earlier version, or made this moment. */
const MADE_THIS_MOMENT_MS = 3_600_000

export interface PageStage {
  /** Where Astro finds the pages, and its own files. */
  readonly place: AstroInlineConfig & { readonly root: string }
  /** All of it, on the disk that what was made may be kept on. */
  readonly folder: string
  /** For Astro, which empties it first; its permissions are those of any new folder. */
  readonly site: string
  /** Where the program that Astro makes is put. */
  readonly program: string
  readonly remove: () => void
}

/**
 * Sweeps what killed builds left, and makes a new stage.
 * @param beside folder that an installed program may write in @param installed whether the program is
 * @throws CommandFailure where pages cannot be built there
 */
export function makeStage(beside: string, installed = INSTALLED): PageStage {
  const parent = installed ? join(beside, WORK) : join(ROOT, 'node_modules')
  refuseUnusable(parent, installed)
  const folder = newFolder(parent)
  writeOwner(join(folder, OWNER))
  for (const name of readdirSync(parent)) if (name.startsWith(PREFIX)) sweep(join(parent, name))
  const root = installed ? linkPackages(folder) : ROOT
  const site = join(installed ? root : folder, 'site')
  mkdirSync(site)
  return {
    place: installed ? placeIn(root) : { root },
    folder,
    site,
    program: join(folder, 'program'),
    remove: () => {
      clear(folder)
      if (installed) removeIfEmpty(parent)
    },
  }
}

/**
 * Astro takes the path of a style sheet for an address, and leaves out all sheets without a word; a backslash it takes
 * for a separator, and finds nothing.
 */
const UNUSABLE = sep === '\\' ? /[#?%\p{Cc}]/u : /[#?%\\\p{Cc}]/u

function refuseUnusable(parent: string, installed: boolean): void {
  const [sign] = UNUSABLE.exec(parent) ?? []
  if (sign === undefined) return
  throw new CommandFailure(
    `Pages cannot be built in ${JSON.stringify(parent)}: Astro cannot work with ${JSON.stringify(sign)} in a path.`,
    EXIT.wrongUse,
    installed
      ? 'choose a folder with --out whose path has no #, ?, %, backslash or line break'
      : 'move the project to a folder whose path has no #, ?, %, backslash or line break',
  )
}

/** Another build may take the parent away, empty as it finds it, before the stage is in it. */
function newFolder(parent: string): string {
  for (;;) {
    mkdirSync(parent, { recursive: true })
    try {
      return mkdtempSync(join(parent, PREFIX))
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code === 'ENOENT') continue
      // The system names the pattern of the new folder's name.
      throw new CommandFailure(
        `${parent} cannot be written: ${faultWords(error)}.`,
        EXIT.failed,
        'check the permissions and the free space of the folder',
      )
    }
  }
}

/** Pages may still be written into the folder of a build that has failed; that it has is what is to be told. */
function clear(folder: string): void {
  try {
    rmSync(folder, { recursive: true, force: true, maxRetries: 3 })
  } catch {
    // The next build sweeps it.
  }
}

function removeIfEmpty(folder: string): void {
  try {
    rmdirSync(folder)
  } catch {
    // Another build has its stage there.
  }
}

function sweep(folder: string): void {
  const owner = join(folder, OWNER)
  const made = statSync(folder, { throwIfNoEntry: false })
  if (made === undefined) return
  const ownerless = statSync(owner, { throwIfNoEntry: false }) === undefined
  if (ownerless ? made.mtimeMs + MADE_THIS_MOMENT_MS < Date.now() : isAbandoned(owner))
    rmSync(folder, { recursive: true, force: true })
}

/**
 * Folders within one another, with a link to one of the folders of packages in each, so that what lies at the
 * innermost finds the packages that this program finds. @returns the innermost
 */
export function linkPackages(folder: string): string {
  let inner = folder
  for (const packages of packageFolders().reverse()) {
    inner = join(inner, 'in')
    mkdirSync(inner)
    symlinkSync(packages, join(inner, 'node_modules'), 'junction')
  }
  return inner
}

/** Astro looks for its configuration in its root. */
function placeIn(root: string): PageStage['place'] {
  const config = pathToFileURL(join(ROOT, 'built/commands/astro-config.js')).href
  writeFileSync(join(root, 'astro.config.mjs'), `export { default } from ${JSON.stringify(config)}\n`)
  return {
    root,
    srcDir: join(ROOT, 'built'),
    cacheDir: join(root, 'cache'),
    vite: {
      cacheDir: join(root, 'cache/vite'),
      server: { fs: { allow: [root, ROOT, ...packageFolders()] } },
    },
  }
}
