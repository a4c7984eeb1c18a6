/** Builds the site from records: one computation, Astro's pages, the data files, then the swap. */
import type { Moment } from '../core/measure/moment.ts'
import {
  closeSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  openSync,
  readdirSync,
  renameSync,
  rmSync,
  writeFileSync,
  writeSync,
} from 'node:fs'
import { dirname, join, relative, resolve, sep } from 'node:path'
import { build } from 'astro'
import { paths } from '../edition/shape/addresses.ts'
import { computeEdition } from '../edition/compute.ts'
import type { Edition } from '../edition/shape/edition.ts'
import { dataFiles } from '../edition/writers/outputs.ts'
import { forAudience } from '../edition/publishing.ts'
import { listedPages, sitemapFiles } from '../edition/writers/sitemap.ts'
import { putEdition } from '../edition/shape/slot.ts'
import type { Records } from '../records/load.ts'
import { discard, type OutputFolder, prepareOutput, swapIn } from './output-folder.ts'
import { CommandFailure, EXIT, PROGRAM, ROOT, today } from './program.ts'

export interface BuildOptions {
  readonly out: string
  readonly audience: Edition['audience']
  readonly asOf?: Moment
  readonly address?: string
}

export interface BuiltSite {
  readonly edition: Edition
  readonly folder: string
  readonly pages: number
}

/** Project folders that no output may touch. */
const SOURCES = ['src', 'schemas', 'test', 'node_modules', '.git']

/** @throws CommandFailure with the output folder as it was before */
export async function buildSite(records: Records, options: BuildOptions): Promise<BuiltSite> {
  const output = prepareOutput(options.out, [
    records.contentDir,
    ...SOURCES.map((name) => resolve(ROOT, name)),
  ])
  try {
    const edition = forAudience(
      computeEdition(records, {
        program: PROGRAM,
        asOf: options.asOf,
        today: today(),
        address: options.address,
      }),
      options.audience,
    )
    await buildPages(edition, output.next)
    writeDataFiles(edition, output.next)
    const pages = pagesOf(output.next)
    writeSitemap(edition, output.next, pages)
    checkOutput(edition, output)
    swapIn(output, PROGRAM)
    return { edition, folder: output.final, pages: pages.length }
  } catch (error) {
    discard(output)
    throw error
  }
}

/**
 * Astro runs its own intermediate program from the output folder, where it must find the project's packages,
 * or else from one folder
 * shared by all builds. So pages are built in a folder of their own inside the project, then moved.
 */
async function buildPages(edition: Edition, folder: string): Promise<void> {
  process.env['ASTRO_TELEMETRY_DISABLED'] = '1'
  putEdition(edition)
  process.chdir(ROOT)
  const stage = mkdtempSync(join(ROOT, 'node_modules', '.pages-'))
  try {
    await astroBuild(edition, stage)
    moveFolder(stage, folder)
  } finally {
    rmSync(stage, { recursive: true, force: true })
  }
}

/** By renaming; by copying where the folders lie on different disks. */
function moveFolder(from: string, to: string): void {
  rmSync(to, { recursive: true, force: true })
  try {
    renameSync(from, to)
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EXDEV') throw error
    cpSync(from, to, { recursive: true })
  }
}

async function astroBuild(edition: Edition, folder: string): Promise<void> {
  await build({
    root: ROOT,
    outDir: folder,
    base: edition.address.base,
    ...(edition.address.origin === null ? {} : { site: edition.address.origin }),
    logLevel: 'error',
  })
}

function writeDataFiles(edition: Edition, folder: string): void {
  const made = new Set<string>()
  for (const file of dataFiles(edition)) {
    const path = join(folder, file.path)
    const parent = dirname(path)
    if (!made.has(parent)) mkdirSync(parent, { recursive: true })
    made.add(parent)
    writePieces(path, file.pieces)
  }
  cpSync(resolve(ROOT, 'schemas'), join(folder, 'schemas'), { recursive: true })
}

function writePieces(path: string, pieces: Iterable<string>): void {
  const file = openSync(path, 'w')
  try {
    for (const piece of pieces) writeSync(file, piece)
  } finally {
    closeSync(file)
  }
}

/** Directory addresses of all pages, "" for the front page, in code-unit order. */
function pagesOf(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name === 'index.html')
    .map((entry) => relative(folder, entry.parentPath).split(sep).join('/'))
    .map((path) => (path === '' ? '' : `${path}/`))
    .sort()
}

function writeSitemap(edition: Edition, folder: string, pages: readonly string[]): void {
  if (edition.address.origin === null) return
  for (const [name, text] of sitemapFiles(
    `${edition.address.origin}${edition.address.base}`,
    listedPages(edition, pages),
  ))
    writeFileSync(join(folder, name), text)
}

/** Every lot has its certificate page and data file: a page that Astro left out must not go unnoticed. */
function checkOutput(edition: Edition, { next }: OutputFolder): void {
  const missing = [...edition.lots.keys()]
    .flatMap((id) => [join(paths.certificate(id), 'index.html'), paths.lotData(id)])
    .filter((path) => !existsSync(join(next, path)))
  if (missing.length > 0)
    throw new CommandFailure(
      `The build left out ${missing.length} files, the first ${missing[0]}; the earlier site stays.`,
      EXIT.failed,
    )
}
