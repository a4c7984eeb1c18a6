/** Draws the pages of a large site in several threads, while this one, which alone writes the site, makes the other files. */
import { setImmediate as turn } from 'node:timers/promises'
import type { Edition } from '../edition/shape/edition.ts'
import { type ChangedPage, drawPages, isTaken, redraw, viewBefore } from './draw-pages.ts'
import type { DrawThread } from './draw-threads.ts'
import { PageShares } from './page-shares.ts'
import type { SiteFiles } from './site-files.ts'

/** @param goesOn is asked before each file; the rest is left where it says no */
export type OtherFiles = (goesOn: () => Promise<boolean>) => Promise<void>

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

/** @throws the first of what a page or another file throws, or the system */
export async function drawInThreads(drawing: Drawing): Promise<void> {
  const { changed, files, fan, others } = drawing
  if (fan.threads.length > 0) return drawTogether(drawing)
  await drawPages(changed, files)
  await others(async () => true)
}

/** Numbers of threads: this one, then those that help it. */
const THIS = 0

async function drawTogether({ changed, files, edition, fan, others }: Drawing): Promise<void> {
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
  const own = async () => {
    for (const each of shares.others) if (await work.goesOn()) await drawPages([each], files)
    await others(work.goesOn)
    for (let next = shares.next(THIS); next.length > 0; next = shares.next(THIS))
      for (const each of next) if (await work.goesOn()) await drawPages([each], files)
  }
  const helped = (thread: DrawThread, number: number) => async () => {
    const next = () => askedOf(thread, shares.next(number), files)
    // The thread draws the next pages while these are written.
    let [now, later] = [next(), next()]
    for (; now.pages.length > 0; [now, later] = [later, next()]) {
      const drawn = await now.drawn
      for (const [place, each] of now.pages.entries()) {
        const page = drawn[place]
        if (page === undefined || !(await isTaken(each, page, files))) again.push(each)
      }
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
