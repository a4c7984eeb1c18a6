/** Builds the site from records: one computation, Astro's pages, the data files, then the swap. */
import type { Moment } from '../core/measure/moment.ts'
import { writeFileSync } from 'node:fs'
import { dirname, join, resolve } from 'node:path'
import { defined } from '../core/measure/defined.ts'
import type { HeldLots } from '../edition/compute.ts'
import { pageFile, pagesAmong, paths } from '../edition/shape/addresses.ts'
import type { Edition } from '../edition/shape/edition.ts'
import { issuedState, manifestOf } from '../edition/writers/manifest.ts'
import { tracedEdition } from '../edition/shape/traced-edition.ts'
import type { Records } from '../records/load.ts'
import { countWords } from '../words/numbers.ts'
import { buildPages, buildSitemap, filesBesidePages, type FilesToBuild } from './build-files.ts'
import { earlierSites } from './earlier-sites.ts'
import { onInterruption } from './interruption.ts'
import { carryOver } from './kept-files.ts'
import { keptSources } from './kept-sources.ts'
import { MANIFEST } from './manifest-file.ts'
import { memoryWatch } from './memory-watch.ts'
import { discard, type OutputFolder, prepareOutput, swapIn } from './output-folder.ts'
import { CommandFailure, EXIT, INSTALLED, PROGRAM, ROOT, today } from './program.ts'
import { programDigest } from './program-digest.ts'
import { type Progress, progress } from './progress.ts'
import { heldOf, siteEdition } from './site-edition.ts'
import { SiteFiles } from './site-files.ts'
import { siteThreads } from './site-threads.ts'
import { drawnLines } from './why-drawn.ts'

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
  /** Called once the output is ours. @returns lines for the reader of the command */
  readonly atOutput?: () => readonly string[]
  /** Lots that are held at once, in place of those that memory has room for. */
  readonly held?: HeldLots
  /** So many threads help to draw the pages; as many as pay where nothing is said. */
  readonly threads?: number
}

export interface BuiltSite {
  readonly edition: Edition
  readonly folder: string
  readonly pages: number
  /** Files of pages that were drawn; the others were taken from the site before. */
  readonly drawn: readonly string[]
  /** The same of data files. */
  readonly made: readonly string[]
  /** Lines that say so. */
  readonly drawnLines: readonly string[]
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
    keep: records.site.keep ?? [],
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
  const { next, final, spare, refuseLater } = output
  const earlier = earlierSites(final, options)
  const notedBefore = options.atOutput?.() ?? []
  options.at(`Computing ${countWords(records.lots.size, 'lot')}`)
  const program = programDigest()
  const sources = keptSources(final, options.fresh === true)
  const question = defined({
    audience: options.audience,
    asOf: options.asOf,
    today: today(),
    address: options.address,
    held: heldOf(records, sources, options.held),
  })
  const edition = siteEdition(records, question, sources)
  const losses = earlier.losses(() => issuedState(edition), edition.asOf.text)
  const traced = tracedEdition(edition)
  const files = new SiteFiles({
    final,
    next,
    ...defined({ spare }),
    edition: traced,
    fresh: options.fresh === true,
    unknown: program === null,
    atFile: memoryWatch(),
  })
  const threads = siteThreads({ records, question, final, sources, program, count: options.threads })
  const toBuild = {
    edition: traced,
    files,
    program,
    beside: dirname(next),
    toAsk: question.held === undefined ? [] : [...edition.sources.keys()],
    fan: threads.fan,
  }
  await buildFiles(toBuild, options)
  checkOutput(edition, files)
  const changed = files.removeLeft()
  const manifest = manifestOf(edition, issuedState(edition), files.digests)
  writeFileSync(join(next, MANIFEST), `${JSON.stringify(manifest)}\n`)
  refuseLater(next)
  await carryOver(final, next, records.site.keep ?? [])
  const left = await swapIn(output, { ...changed, files: [...changed.files, MANIFEST] })
  const notes = [
    ...left,
    ...losses,
    ...earlier.vanished(manifest),
    ...files.writeList(),
    ...(sources?.end(records.sources.keys()) ?? []),
    ...threads.notes(),
    ...notedBefore,
  ]
  return { edition, folder: final, ...whatWasDrawn(files), notes }
}

function whatWasDrawn(files: SiteFiles): Pick<BuiltSite, 'pages' | 'drawn' | 'made' | 'drawnLines'> {
  const isMade = (path: string) => !files.isUnchanged(path)
  const pages = pagesAmong(files.all).map(pageFile)
  const data = files.all.filter((path) => !path.endsWith('.html'))
  const [drawn, made] = [pages.filter(isMade), data.filter(isMade)]
  const lines = drawnLines(
    { all: pages.length, made: drawn.length },
    { all: data.length, made: made.length },
    files.changed,
  )
  return { pages: pages.length, drawn, made, drawnLines: lines }
}

async function buildFiles(toBuild: FilesToBuild, { at }: Pick<Progress, 'at'>): Promise<void> {
  const { files } = toBuild
  try {
    at('Building the pages')
    const others = filesBesidePages(toBuild)
    await buildPages(toBuild, {
      ofSource: (source, goesOn) => {
        at(`Building the files of ${source}`)
        return others.ofSource(source, goesOn)
      },
      ofSite: others.ofSite,
    })
    at('Finishing the site')
    await buildSitemap(toBuild)
  } finally {
    // Whoever removes the folder next is alone with it.
    await files.end()
  }
}

/** Every lot has its certificate page and data file: a page that Astro left out must not go unnoticed. */
function checkOutput(edition: Edition, files: SiteFiles): void {
  const missing = [...edition.lots.keys()]
    .flatMap((id) => [pageFile(paths.certificate(id)), paths.lotData(id)])
    .filter((path) => !files.has(path))
  if (missing.length > 0)
    throw new CommandFailure(
      `The build left out ${missing.length} files, the first ${missing[0]}; the earlier site stays.`,
      EXIT.failed,
    )
}
