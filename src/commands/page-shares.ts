/** Which thread draws which pages: those of a source in one thread as far as can be, for each computes the sources of its pages. */

/** Pages that are handed out together. */
const TOGETHER = 32

/** A source of which less than this share is left is drawn to its end without the help of a thread that would have to compute it. */
const WORTH_HELP = 1 / 3

interface OfSource<Page> {
  readonly id: string
  readonly all: number
  readonly left: Page[]
  readonly begunBy: Set<number>
}

export interface SharesRequest<Page> {
  readonly pages: readonly Page[]
  /** Undefined for a page that concerns several sources or none. */
  readonly sourceOf: (page: Page) => string | undefined
  /** Whether a thread need not compute a source that it begins with. */
  readonly isComputed: (thread: number, source: string) => boolean
}

export class PageShares<Page> {
  /** Pages that concern several sources or none. */
  readonly others: readonly Page[]
  readonly #sources: readonly OfSource<Page>[]
  readonly #isComputed: SharesRequest<Page>['isComputed']

  constructor({ pages, sourceOf, isComputed }: SharesRequest<Page>) {
    const bySource = Map.groupBy(pages, sourceOf)
    this.others = bySource.get(undefined) ?? []
    bySource.delete(undefined)
    this.#sources = [...bySource].map(([id, left]) => ({
      id: id as string,
      all: left.length,
      left: [...left],
      begunBy: new Set(),
    }))
    this.#isComputed = isComputed
  }

  /** Begins a source that no thread has begun. @returns its id; undefined where there is none */
  begin(thread: number): string | undefined {
    const source = this.#open().find(({ begunBy }) => begunBy.size === 0)
    source?.begunBy.add(thread)
    return source?.id
  }

  /** The next pages of a source, for a thread that has begun it; none where nothing is left of it. */
  nextOf(id: string): Page[] {
    return this.#sources.find((source) => source.id === id)?.left.splice(0, TOGETHER) ?? []
  }

  /** The next pages of a thread, of whatever source; none where it has nothing more to do. */
  next(thread: number): Page[] {
    const source = this.#sourceFor(thread)
    source?.begunBy.add(thread)
    return source?.left.splice(0, TOGETHER) ?? []
  }

  /** Of which something is left, the most first. */
  #open(): OfSource<Page>[] {
    return this.#sources.filter(({ left }) => left.length > 0).sort((a, b) => b.left.length - a.left.length)
  }

  #sourceFor(thread: number): OfSource<Page> | undefined {
    const open = this.#open()
    return (
      open.find(({ begunBy }) => begunBy.has(thread)) ??
      open.find(({ begunBy }) => begunBy.size === 0) ??
      open.find(({ id, all, left }) => this.#isComputed(thread, id) || WORTH_HELP * all < left.length)
    )
  }
}
