/** Makes the files of a site: pages, what they refer to, data files, schemas and site maps. */
import { readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import type { Edition } from '../edition/shape/edition.ts'
import { putEdition } from '../edition/shape/slot.ts'
import { tracing } from '../edition/shape/trace.ts'
import { dataFiles, type OutputFile } from '../edition/writers/outputs.ts'
import { listedPages, sitemapFiles } from '../edition/writers/sitemap.ts'
import { digestOf } from '../records/issued/digest.ts'
import { drawInThreads, type Fan, type OtherFiles } from './draw-in-threads.ts'
import { changedPages, pagesOf } from './draw-pages.ts'
import { type PageProgram, pageProgram } from './page-program.ts'
import { ROOT } from './program.ts'
import { givenOf, type SiteFiles } from './site-files.ts'

export interface FilesToBuild {
  /** The traced one that the files are made of. */
  readonly edition: Edition
  readonly files: SiteFiles
  /** Digest of the program; null where nothing tells whether it has changed. */
  readonly program: string | null
  /** Folder of the output, beside which an installed program may write. */
  readonly beside: string
  /** Begins the threads that help to draw so many pages. */
  readonly fan: (pages: number, drawing: PageProgram) => Fan
}

/**
 * @param others makes all files beside the pages: after them, or while threads draw
 * @returns addresses of all pages, "" for the front page, in code-unit order
 */
export async function buildPages(
  { edition, files, program, beside, fan }: FilesToBuild,
  others: OtherFiles,
): Promise<string[]> {
  // Its method pages go into the program.
  putEdition(edition)
  const drawing = await pageProgram(edition, beside, program)
  try {
    for (const path of drawing.files.keys())
      await files.write(path, readFileSync(join(drawing.assets, path)), null)
    const pages = await pagesOf(drawing, edition)
    const given = digestOf(
      JSON.stringify([program, edition.address, edition.audience, edition.methods, [...drawing.files]]),
    )
    const changed = await changedPages(pages, files, given)
    await drawInThreads({ changed, files, edition, fan: fan(changed.length, drawing), others })
    return pages
      .map(({ file }) => file)
      .filter((file) => file.endsWith('index.html'))
      .map((file) => file.slice(0, -'index.html'.length))
      .sort()
  } finally {
    drawing.remove()
  }
}

/** @param goesOn is asked before each file; the rest is left where it says no */
export async function buildDataFiles(
  { edition, files, program }: FilesToBuild,
  goesOn: () => Promise<boolean>,
): Promise<void> {
  const common = digestOf(JSON.stringify([program, edition.audience]))
  for (const file of dataFiles(edition)) {
    if (!(await goesOn())) return
    buildDataFile(file, files, givenOf(common, file.given ?? ''))
    await files.room()
  }
  const schemas = resolve(ROOT, 'schemas')
  // Written, not copied: their permissions are those of any new file, whatever the project's are.
  for (const name of readdirSync(schemas))
    await files.write(`schemas/${name}`, readFileSync(join(schemas, name)), null)
}

/** Its pieces are made while they are written. */
function buildDataFile({ path, pieces }: OutputFile, files: SiteFiles, given: string): void {
  if (files.isKept(path, given)) return
  const {
    value: written,
    trace,
    parts,
  } = tracing(() => {
    const all = pieces()
    return all === null ? null : files.begin(path, all)
  })
  files.noteParts(parts)
  written?.({ given, trace, view: null })
}

/** @param pages addresses of all pages */
export async function buildSitemap(
  { edition, files }: FilesToBuild,
  pages: readonly string[],
): Promise<void> {
  if (edition.address.origin === null || edition.audience === 'internal') return
  const listed = listedPages(edition, pages)
  for (const [name, text] of sitemapFiles(`${edition.address.origin}${edition.address.base}`, listed))
    await files.write(name, Buffer.from(text), null)
}
