/**
 * The program that draws the pages. Astro makes it of the project's own files, the method pages and the site's address,
 * which takes longer than all else that a build does; so it is kept until one of these changes. It lies where it finds
 * the packages: among them in a clone, in `.puteoli` beside the output of an installed program. Its folder is made under
 * another name, and lists the digest of each file in it; what is not as listed is made anew.
 */
import {
  lstatSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  readlinkSync,
  renameSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs'
import { dirname, join, relative, sep } from 'node:path'
import type { Edition } from '../edition/shape/edition.ts'
import { digestOf } from '../records/issued/digest.ts'
import { keptText, withDigest } from './kept-text.ts'
import { type PageStyles, runAstro } from './make-page-program.ts'
import { linkPackages, makeStage, type PageStage, WORK } from './page-stage.ts'
import { INSTALLED, ROOT } from './program.ts'
import { packageFolders } from './program-digest.ts'

const NAME = 'page-program-'
const LIST = 'list.json'
const DRAWING = 'program'
const ASSETS = 'assets'

/** So many are kept, for as many sites; others go once nobody can be drawing with them. */
const KEPT = 2
const IN_USE_MS = 3_600_000

export interface PageProgram {
  /** Path of the module that draws. */
  readonly entry: string
  readonly styles: PageStyles
  /** Folder of what pages refer to, with the digest of each file by its path there. */
  readonly assets: string
  readonly files: ReadonlyMap<string, string>
  /** Called when the pages are drawn. */
  readonly remove: () => void
}

interface Listed {
  /** Path of the entry, from the folder that is innermost. */
  readonly entry: string
  readonly styles: PageStyles
  /** Digest of each file by its path from there. */
  readonly files: Readonly<Record<string, string>>
}

/**
 * The one that was kept, or a new one.
 * @param beside folder that an installed program may write in
 * @param program digest of the program; null has it made anew, as nothing tells whether it has changed
 */
export async function pageProgram(
  edition: Edition,
  beside: string,
  program: string | null,
): Promise<PageProgram> {
  const parent = INSTALLED ? join(beside, WORK) : join(ROOT, 'node_modules/.cache/puteoli')
  const folder = program === null ? null : join(parent, `${NAME}${keyOf(edition, parent, program)}`)
  const kept = folder === null ? undefined : programIn(folder)
  if (folder !== null && kept !== undefined) {
    noteUse(folder)
    return kept
  }
  return makeProgram(edition, beside, folder)
}

/** Digest of all that is put into the program. */
function keyOf({ address, methods }: Edition, parent: string, program: string): string {
  const mode = process.env['NODE_ENV'] ?? 'production'
  const parts = [program, address, methods, mode, ROOT, parent, packageFolders()]
  return digestOf(JSON.stringify(parts)).slice(-32)
}

/** Makes it in a stage, and keeps it in a folder where that can be. */
async function makeProgram(edition: Edition, beside: string, folder: string | null): Promise<PageProgram> {
  const stage = makeStage(beside)
  try {
    const styles = await runAstro(edition, stage)
    const made = join(stage.folder, 'made')
    lay(stage, made, styles)
    const place = folder !== null && keep(made, folder, stage) ? folder : made
    const program = programIn(place)
    if (program === undefined)
      throw new RangeError(`makeProgram needs the program as made, got another in ${place}`)
    if (place !== made) stage.remove()
    return { ...program, remove: stage.remove }
  } catch (error) {
    stage.remove()
    throw error
  }
}

/** Puts what Astro has made into a folder, with its list. */
function lay(stage: PageStage, made: string, styles: PageStyles): void {
  mkdirSync(made)
  const inner = INSTALLED ? linkPackages(made) : made
  renameSync(stage.program, join(inner, DRAWING))
  renameSync(stage.site, join(inner, ASSETS))
  const files = Object.fromEntries(
    [DRAWING, ASSETS].flatMap((name) => filesBelow(inner, name)).map((path) => [path, digestAt(inner, path)]),
  )
  const entry = Object.keys(files).find((path) => path.startsWith(`${DRAWING}/prerender-entry`))
  if (entry === undefined) throw new RangeError('lay needs the entry of what Astro has made, got none')
  const text = JSON.stringify({ entry, styles, files } satisfies Listed)
  writeFileSync(join(made, LIST), withDigest(text))
}

/**
 * Gives it its name, unless another build has.
 * @returns whether it lies there; it does not where the folder cannot be written
 */
function keep(made: string, folder: string, { folder: stage }: PageStage): boolean {
  try {
    mkdirSync(dirname(folder), { recursive: true })
    if (programIn(folder) === undefined) {
      if (lstatSync(folder, { throwIfNoEntry: false }) !== undefined)
        renameSync(folder, join(stage, 'spoiled'))
      renameSync(made, folder)
    }
    removeOthers(folder)
    return true
  } catch {
    // Another build may have put it there this moment.
    return programIn(folder) !== undefined
  }
}

/** The program that lies in a folder; undefined unless every file of it is as it was made. */
function programIn(folder: string): PageProgram | undefined {
  try {
    const inner = innermost(folder)
    const { entry, styles, files } = readList(join(folder, LIST))
    for (const [path, digest] of Object.entries(files)) if (digestAt(inner, path) !== digest) return undefined
    const assets = Object.entries(files).filter(([path]) => path.startsWith(`${ASSETS}/`))
    return {
      entry: join(inner, entry),
      styles,
      assets: join(inner, ASSETS),
      files: new Map(assets.map(([path, digest]) => [path.slice(ASSETS.length + 1), digest])),
      remove: () => {},
    }
  } catch {
    return undefined
  }
}

function readList(path: string): Listed {
  const text = keptText(path)
  if (text === undefined) throw new RangeError(`readList needs a list as it was written, got ${path}`)
  return JSON.parse(text) as Listed
}

/** Where links lead to the packages of an installed program. @throws RangeError where one leads elsewhere */
function innermost(folder: string): string {
  if (!INSTALLED) return folder
  return packageFolders()
    .reverse()
    .reduce((outer, packages) => {
      const inner = join(outer, 'in')
      if (readlinkSync(join(inner, 'node_modules')).replace(/[\\/]$/, '') !== packages)
        throw new RangeError(`innermost needs a link to ${packages}, got another`)
      return inner
    }, folder)
}

function digestAt(folder: string, path: string): string {
  return digestOf(readFileSync(join(folder, path)))
}

function filesBelow(folder: string, name: string): string[] {
  return readdirSync(join(folder, name), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .sort()
}

/** The time of a folder says when it was last used. */
function noteUse(folder: string): void {
  try {
    const now = new Date()
    utimesSync(folder, now, now)
  } catch {
    // It may go sooner, and is made again.
  }
}

function removeOthers(folder: string): void {
  const used = readdirSync(dirname(folder))
    .filter((name) => name.startsWith(NAME))
    .map((name) => join(dirname(folder), name))
    .filter((path) => path !== folder)
    .map((path) => ({ path, at: statSync(path).mtimeMs }))
    .sort((a, b) => b.at - a.at)
  for (const { path, at } of used.slice(KEPT - 1))
    if (at + IN_USE_MS < Date.now()) rmSync(path, { recursive: true, force: true })
}
