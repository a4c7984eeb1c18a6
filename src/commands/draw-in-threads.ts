/** Draws the pages of a large site in several threads, while this one, which alone writes the site, makes the other files. */
import { setImmediate as turn } from 'node:timers/promises'
import type { Edition } from '../edition/shape/edition.ts'
import { type ChangedPage, drawPages, isTaken, redraw, viewBefore } from './draw-pages.ts'
import type { DrawThread } from './draw-threads.ts'
import { PageShares } from './page-shares.ts'
import type { SiteFiles } from './site-files.ts'

/** Is asked before each file; the rest is left where it says no. */
export type GoesOn = () => Promise<boolean>

/** Makes the files beside the pages. */
export interface OtherFiles {
  readonly ofSource: (source: string, goesOn: GoesOn) => Promise<void>
  /** Those of several sources or none. */
  readonly ofSite: (goesOn: GoesOn) => Promise<void>
}

export interface Fan {
  /** None where this thread is to draw all pages. */
  readonly threads: readonly DrawThread[]
  /** Whether this thread has computed a source. */
  readonly isComputed: (source: string) => boolean
  /** Hears what could not be kept for the next build. */
  readonly note: (line: string) => void
}

interface Drawing {
  readonly changed: readonly ChangedPage[]
  readonly files: SiteFiles
  readonly edition: Edition
  readonly fan: Fan
  readonly others: OtherFiles
}

/** Lists of pages that a thread is given before the first of them is asked back. */
const AHEAD = 8

/** Numbers of threads: this one, then those that help it. */
const THIS = 0

/** @throws the first of what a page or another file throws, or the system */
export async function drawInThreads({ changed, files, edition, fan, others }: Drawing): Promise<void> {
  const shares = new PageShares({
    pages: changed,
    sourceOf: ({ page }) => page.file.split('/').find((part) => edition.sources.has(part)),
    isComputed: (thread, source) => thread === THIS && fan.isComputed(source),
  })
  const stop = async () => {
    await Promise.all(fan.threads.map((thread) => thread.stop()))
  }
  const work = new Work(stop)
  /** What has to be drawn though it has the view that it had: by this thread, once the others have ended. */
  const again: ChangedPage[] = []
  const draw = async (pages: readonly ChangedPage[]) => {
    for (const each of pages) if (await work.goesOn()) await drawPages([each], files)
  }
  const drawAll = async (take: () => readonly ChangedPage[]) => {
    for (let next = take(); next.length > 0; next = take()) await draw(next)
  }
  const own = async () => {
    await draw(shares.others)
    await others.ofSite(work.goesOn)
    const left = new Set(edition.sources.keys())
    // All files of a source one after the other, for it may be let go then.
    for (let source = shares.begin(THIS); source !== undefined; source = shares.begin(THIS)) {
      left.delete(source)
      await others.ofSource(source, work.goesOn)
      await drawAll(() => shares.nextOf(source))
    }
    for (const source of left) await others.ofSource(source, work.goesOn)
    await drawAll(() => shares.next(THIS))
  }
  const helped = (thread: DrawThread, number: number) => async () => {
    const next = () => askedOf(thread, shares.next(number), files)
    // The thread draws the next pages while these are written, and while this thread computes a source and hears nobody.
    const asked = Array.from({ length: AHEAD }, next)
    for (let now = asked.shift(); now !== undefined; now = asked.shift()) {
      if (now.pages.length === 0) continue
      const drawn = await now.drawn
      for (const [place, each] of now.pages.entries()) {
        const page = drawn[place]
        if (page === undefined || !(await isTaken(each, page, files))) again.push(each)
      }
      asked.push(next())
    }
    for (const line of await thread.notes()) fan.note(line)
  }
  try {
    await work.all([own, ...fan.threads.map((thread, place) => helped(thread, THIS + 1 + place))])
  } finally {
    await stop()
  }
  for (const each of again) await redraw(each, files)
}

/** Pages that a thread draws. */
function askedOf(thread: DrawThread, pages: readonly ChangedPage[], files: SiteFiles) {
  const asked = pages.map((each) => ({ file: each.page.file, viewBefore: viewBefore(each, files) }))
  const drawn = thread.draw(asked)
  // Whoever waits for them is told; they may not be waited for any more.
  drawn.catch(() => undefined)
  return { pages, drawn }
}

/** Things that are done at once, all of which end before the fault of one is thrown. */
class Work {
  readonly #halt: () => Promise<void>
  readonly #faults: unknown[] = []

  /** @param halt ends early what others do, once a fault is known */
  constructor(halt: () => Promise<void>) {
    this.#halt = halt
  }

  /** Lets this thread hear the others. */
  readonly goesOn = async (): Promise<boolean> => {
    await turn()
    return this.#faults.length === 0
  }

  async all(tasks: readonly (() => Promise<void>)[]): Promise<void> {
    const fail = async (fault: unknown) => {
      this.#faults.push(fault)
      await this.#halt()
    }
    await Promise.all(tasks.map((task) => task().catch(fail)))
    if (this.#faults.length > 0) throw this.#faults[0]
  }
}
