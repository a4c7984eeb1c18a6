/** Builds the site from records: one computation, Astro's pages, the data files, then the swap. */
import type { Moment } from '../core/measure/moment.ts'
import { closeSync, existsSync, mkdirSync, openSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { dirname, join, relative, resolve, sep } from 'node:path'
import { paths } from '../edition/shape/addresses.ts'
import { computeEdition } from '../edition/compute.ts'
import type { Edition } from '../edition/shape/edition.ts'
import { issuedState, manifestOf } from '../edition/writers/manifest.ts'
import { dataFiles, type OutputFile } from '../edition/writers/outputs.ts'
import { forAudience } from '../edition/publishing.ts'
import { listedPages, sitemapFiles } from '../edition/writers/sitemap.ts'
import { putPageMemory } from '../edition/shape/drawing.ts'
import { putEdition } from '../edition/shape/slot.ts'
import type { Records } from '../records/load.ts'
import { countWords } from '../words/numbers.ts'
import { earlierSites } from './earlier-sites.ts'
import { onInterruption } from './interruption.ts'
import { carryOver, refuseForeignFiles } from './kept-files.ts'
import { type KeptPages, keptPages } from './kept-pages.ts'
import { keptSources } from './kept-sources.ts'
import { fileDigests, MANIFEST } from './manifest-file.ts'
import { discard, type OutputFolder, prepareOutput, swapIn } from './output-folder.ts'
import { drawPages, pagesOf } from './draw-pages.ts'
import { pageProgram } from './page-program.ts'
import { CommandFailure, EXIT, INSTALLED, PROGRAM, ROOT, today } from './program.ts'
import { programDigest } from './program-digest.ts'
import { shippedRecords } from './shipped.ts'
import { type Progress, progress } from './progress.ts'

export interface BuildOptions {
  readonly out: string
  readonly audience: Edition['audience']
  readonly asOf?: Moment
  readonly address?: string
  /** Folder of a site to compare with, beside the one that is replaced. */
  readonly against?: string
  /** Lots whose certificates may vanish or change. */
  readonly accept?: readonly string[]
  /** Draws every page, whether it has changed or not. */
  readonly fresh?: boolean
}

export interface BuiltSite {
  readonly edition: Edition
  readonly folder: string
  readonly pages: number
  /** Pages among them that were taken from the site before. */
  readonly unchanged: number
  /** Lines that tell what else changed against the earlier site. */
  readonly notes: readonly string[]
}

/** Folders of the program that no output may touch. */
const APART = INSTALLED
  ? [ROOT]
  : ['src', 'schemas', 'test', 'node_modules', '.git'].map((name) => resolve(ROOT, name))

/** @throws CommandFailure with the output folder as it was before */
export async function buildSite(records: Records, options: BuildOptions): Promise<BuiltSite> {
  const output = prepareOutput({
    folder: options.out,
    apart: [records.contentDir, ...APART],
    program: PROGRAM,
    audience: options.audience,
  })
  const stopWatching = onInterruption(() => discard(output))
  const telling = progress()
  try {
    return await buildInto(output, records, { ...options, at: telling.at })
  } finally {
    telling.end()
    stopWatching()
    discard(output)
  }
}

async function buildInto(
  output: OutputFolder,
  records: Records,
  options: BuildOptions & Pick<Progress, 'at'>,
): Promise<BuiltSite> {
  const { next, final } = output
  const keep = records.site.keep ?? []
  const earlier = earlierSites(final, options)
  refuseForeignFiles(final, keep)
  options.at(`Computing ${countWords(records.lots.size, 'lot')}`)
  const sources = keptSources(final, options.fresh === true)
  const edition = forAudience(
    computeEdition(records, {
      program: PROGRAM,
      asOf: options.asOf,
      today: today(),
      address: options.address,
      shipped: shippedRecords(),
      ...(sources === undefined ? {} : { kept: sources }),
    }),
    options.audience,
  )
  const state = issuedState(edition)
  const losses = earlier.losses(state)
  options.at('Building the pages')
  const kept = await buildPages(edition, output, options.fresh === true)
  options.at('Writing the data files')
  writeDataFiles(edition, next)
  const pages = pagesIn(next)
  writeSitemap(edition, next, pages)
  checkOutput(edition, output)
  const manifest = manifestOf(edition, state, fileDigests(next, kept.files))
  writeFileSync(join(next, MANIFEST), `${JSON.stringify(manifest)}\n`)
  refuseForeignFiles(final, keep, next)
  carryOver(final, next, keep)
  const left = await swapIn(output)
  const notes = [
    ...left,
    ...losses,
    ...earlier.vanished(manifest),
    ...kept.write(manifest.files),
    ...(sources?.notes() ?? []),
  ]
  return { edition, folder: final, pages: pages.length, unchanged: kept.files.size, notes }
}

/** Those that have not changed come from the site before. */
async function buildPages(
  edition: Edition,
  { next, final }: OutputFolder,
  fresh: boolean,
): Promise<KeptPages> {
  putEdition(edition)
  const digest = programDigest()
  const program = await pageProgram(edition, dirname(next), digest)
  const kept = keptPages({ final, next, program: digest, assets: [...program.files.keys()], edition, fresh })
  putPageMemory(kept)
  try {
    for (const path of program.files.keys()) copyFile(join(program.assets, path), join(next, path))
    await drawPages(await pagesOf(program, edition), next)
    kept.putInto(next)
    return kept
  } finally {
    putPageMemory(undefined)
    program.remove()
  }
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
  writeSchemas(folder)
}

function writeSchemas(folder: string): void {
  const from = resolve(ROOT, 'schemas')
  for (const name of readdirSync(from)) copyFile(join(from, name), join(folder, 'schemas', name))
}

/** Written, not copied: its permissions are those of any new file, whatever those of the other are. */
function copyFile(from: string, to: string): void {
  mkdirSync(dirname(to), { recursive: true })
  writeFileSync(to, readFileSync(from))
}

function writePieces(path: string, pieces: OutputFile['pieces']): void {
  const file = openSync(path, 'w')
  try {
    for (const piece of pieces) writeFileSync(file, piece)
  } finally {
    closeSync(file)
  }
}

/** Directory addresses of all pages, "" for the front page, in code-unit order. */
function pagesIn(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name === 'index.html')
    .map((entry) => relative(folder, entry.parentPath).split(sep).join('/'))
    .map((path) => (path === '' ? '' : `${path}/`))
    .sort()
}

function writeSitemap(edition: Edition, folder: string, pages: readonly string[]): void {
  if (edition.address.origin === null || edition.audience === 'internal') return
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
