/** Makes the files of a site: pages, what they refer to, data files, schemas and site maps. */
import { readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { setImmediate as turn } from 'node:timers/promises'
import { pagesAmong } from '../edition/shape/addresses.ts'
import { once } from '../core/measure/once.ts'
import type { Edition } from '../edition/shape/edition.ts'
import { askForParts } from '../edition/shape/part-of-source.ts'
import { putEdition } from '../edition/shape/slot.ts'
import { tracing } from '../edition/shape/trace.ts'
import { dataFiles, type OutputFile } from '../edition/writers/outputs.ts'
import { listedPages, sitemapFiles } from '../edition/writers/sitemap.ts'
import { digestOf } from '../records/issued/digest.ts'
import { drawInThreads, type Fan, type GoesOn, type OtherFiles } from './draw-in-threads.ts'
import { changedPages, loadPages } from './draw-pages.ts'
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
  /** Sources that may be let go before a file of several sources takes something from them: they are asked for it first. */
  readonly toAsk: readonly string[]
  /** Begins the threads that help to draw so many pages. */
  readonly fan: (pages: number, drawing: PageProgram) => Fan
}

/** @param others makes all files beside the pages: between them, or while threads draw */
export async function buildPages(
  { edition, files, program, beside, toAsk, fan }: FilesToBuild,
  others: OtherFiles,
): Promise<void> {
  // Its method pages go into the program.
  putEdition(edition)
  const drawing = await pageProgram(edition, beside, program)
  try {
    for (const path of drawing.files.keys())
      await files.write(path, readFileSync(join(drawing.assets, path)), null)
    const common = digestOf(
      JSON.stringify([program, edition.address, edition.audience, edition.methods, [...drawing.files]]),
    )
    await askSources(toAsk, drawing, edition)
    const changed = await changedPages(drawing, edition, { files, common })
    await drawInThreads({ changed, files, edition, fan: fan(changed.length, drawing), others })
  } finally {
    drawing.remove()
  }
}

/** A part has its name once the page that takes it is loaded. */
async function askSources(sources: readonly string[], drawing: PageProgram, edition: Edition): Promise<void> {
  if (sources.length === 0) return
  await loadPages(drawing)
  for (const source of sources) {
    askForParts(edition, source)
    // What a source was asked for is held by weak references until the turn ends.
    await turn()
  }
}

/** Each file is made when it is its turn. */
export function filesBesidePages({ edition, files, program }: FilesToBuild): OtherFiles {
  const common = digestOf(JSON.stringify([program, edition.audience]))
  // Not before every source was asked: which files there are is asked of each.
  const bySource = once(() => Map.groupBy(dataFiles(edition), ({ source }) => source))
  const build = async (source: string | undefined, goesOn: GoesOn) => {
    for (const file of bySource().get(source) ?? []) {
      if (!(await goesOn())) return
      buildDataFile(file, files, givenOf(common, file.given ?? ''))
      await files.room()
    }
    // Files of tables hold the lots that they were made of.
    bySource().delete(source)
  }
  return {
    ofSource: build,
    ofSite: async (goesOn) => {
      await build(undefined, goesOn)
      const schemas = resolve(ROOT, 'schemas')
      // Written, not copied: their permissions are those of any new file, whatever the project's are.
      for (const name of readdirSync(schemas))
        await files.write(`schemas/${name}`, readFileSync(join(schemas, name)), null)
    },
  }
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

/** Of all pages that have been made. */
export async function buildSitemap({ edition, files }: FilesToBuild): Promise<void> {
  if (edition.address.origin === null || edition.audience === 'internal') return
  const pages = pagesAmong(files.all).sort()
  const listed = listedPages(edition, pages)
  for (const [name, text] of sitemapFiles(`${edition.address.origin}${edition.address.base}`, listed))
    await files.write(name, Buffer.from(text), null)
}
