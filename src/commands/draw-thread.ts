/** Draws pages in a thread of its own, of an edition that it computes from the same records (draw-threads.ts starts it). */
import { parentPort, workerData } from 'node:worker_threads'
import { putEdition } from '../edition/shape/slot.ts'
import { tracedEdition } from '../edition/shape/traced-edition.ts'
import type { Edition } from '../edition/shape/edition.ts'
import type { Records } from '../records/load.ts'
import { type DrawnPage, drawnPage, pagesOf, type PageToDraw } from './draw-pages.ts'
import { keptSources } from './kept-sources.ts'
import type { PageProgram } from './page-program.ts'
import { received } from './posted.ts'
import { CommandFailure, EXIT } from './program.ts'
import { programDigest } from './program-digest.ts'
import { siteEdition, type SiteQuestion } from './site-edition.ts'

export interface ThreadWork {
  readonly records: Records
  readonly question: SiteQuestion
  /** The site that is replaced. */
  readonly final: string
  /** Digest of the program. */
  readonly program: string
  readonly drawing: Pick<PageProgram, 'entry' | 'styles'>
}

/** A page by its file, with the digest of the view that it had before. */
export interface AskedPage {
  readonly file: string
  readonly viewBefore: string | null
}

/** What a thread answers to each list of pages, in the order of the lists, and to the end of them. */
export type ThreadAnswer =
  | { readonly drawn: readonly DrawnPage[] }
  | { readonly notes: readonly string[] }
  | { readonly failure: Pick<CommandFailure, 'message' | 'status'> }

if (parentPort !== null) drawFor(parentPort, received(workerData as SharedArrayBuffer))

/** Whatever else is thrown ends the thread, and the thread that started it is told. */
function drawFor(port: NonNullable<typeof parentPort>, work: ThreadWork): void {
  const made = readyToDraw(work)
  // What went wrong is told to who asks for pages.
  made.catch(() => undefined)
  let last: Promise<unknown> = made
  port.on('message', (asked: readonly AskedPage[] | null) => {
    last = Promise.all([made, last])
      .then(async ([{ draw, notes }]) => {
        if (asked === null) return port.postMessage({ notes: notes() } satisfies ThreadAnswer)
        const drawn = await draw(asked)
        port.postMessage({ drawn } satisfies ThreadAnswer, buffersOf(drawn))
      })
      .catch((error: unknown) => {
        if (!(error instanceof CommandFailure)) throw error
        const { message, status } = error
        port.postMessage({ failure: { message, status } } satisfies ThreadAnswer)
      })
  })
}

interface ReadyToDraw {
  readonly draw: (asked: readonly AskedPage[]) => Promise<DrawnPage[]>
  readonly notes: () => readonly string[]
}

async function readyToDraw({ records, question, ...work }: ThreadWork): Promise<ReadyToDraw> {
  const kept = keptSources(work.final, false)
  if (kept === undefined || programDigest() !== work.program)
    throw new CommandFailure(
      'The program was changed while it built the site.',
      EXIT.failed,
      'build it again',
    )
  const edition = tracedEdition(siteEdition(records, question, kept))
  putEdition(edition)
  const pages = await pagesByFile(work.drawing, edition)
  const told = new Set<string>()
  const draw = async (asked: readonly AskedPage[]) => {
    const drawn: DrawnPage[] = []
    for (const { file, viewBefore } of asked) {
      const page = pages.get(file)
      if (page === undefined) throw new RangeError(`draw needs the file of a page, got ${file}`)
      drawn.push(withoutTold(await drawnPage(page, viewBefore), told))
    }
    return drawn
  }
  return { draw, notes: () => kept.end(records.sources.keys()) }
}

async function pagesByFile(
  drawing: ThreadWork['drawing'],
  edition: Edition,
): Promise<ReadonlyMap<string, PageToDraw>> {
  return new Map((await pagesOf(drawing, edition)).map((page) => [page.file, page]))
}

/** What was made for several pages is told once: it may rest on every lot. */
function withoutTold(page: DrawnPage, told: Set<string>): DrawnPage {
  const parts = new Map([...page.parts].filter(([name]) => !told.has(name)))
  for (const name of parts.keys()) told.add(name)
  return { ...page, parts }
}

function buffersOf(drawn: readonly DrawnPage[]): ArrayBuffer[] {
  return drawn.flatMap(({ bytes }) => (bytes === null ? [] : [bytes.buffer as ArrayBuffer]))
}
