/**
 * Pages that are drawn from one plain value alone, their view, so that a page whose view has not changed since the
 * build before need not be drawn again. A command may put a memory of that build into a slot (slot.ts tells why).
 */
import type { Moment } from '../../core/measure/moment.ts'

/**
 * What a page may be drawn from: a value that its JSON tells from every other one. A moment's JSON is its text, which is
 * all of it that a page prints.
 */
type Plain<T> = T extends string | number | boolean | null | undefined | Moment
  ? T
  : T extends
        | ((...given: never[]) => unknown)
        | ReadonlyMap<unknown, unknown>
        | ReadonlySet<unknown>
        | symbol
        | bigint
    ? never
    : { readonly [Key in keyof T]: Plain<T[Key]> }

/** Does not compile for a view that JSON would not hold as it is. */
type IfPlain<View> = [View] extends [Plain<View>] ? unknown : never

export interface PageFromView<View> {
  readonly params: Readonly<Record<string, string>>
  /** Address of the page, ending in "/". */
  readonly path: string
  /** Makes it anew at each call, so that the views of all pages are never in memory together. */
  readonly view: () => View
}

export interface PageMemory {
  /** Whether the page lies there as this view draws it, and is taken from there. */
  readonly isKept: (path: string, view: () => unknown) => boolean
  /** Notes what a page is drawn from. */
  readonly drawn: (path: string, view: unknown) => void
}

const SLOT = Symbol.for('puteoli.page-memory')

/** @param memory undefined has every page drawn */
export function putPageMemory(memory: PageMemory | undefined): void {
  ;(globalThis as Record<symbol, unknown>)[SLOT] = memory
}

/** The paths of a route that are to be drawn, each with its view. */
export function pagesToDraw<View>(
  pages: readonly PageFromView<View>[] & IfPlain<View>,
): { params: Record<string, string>; props: { view: () => View } }[] {
  const memory = (globalThis as Record<symbol, unknown>)[SLOT] as PageMemory | undefined
  return pages
    .filter(({ path, view }) => memory?.isKept(path, view) !== true)
    .map(({ params, path, view: viewOf }) => {
      const view = () => {
        const made = viewOf()
        memory?.drawn(path, made)
        return made
      }
      return { params: { ...params }, props: { view } }
    })
}
