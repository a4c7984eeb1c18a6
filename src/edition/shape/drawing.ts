/**
 * Pages that are drawn from one plain value alone, their view, so that a page whose view has not changed since the
 * build before need not be drawn again. A command may put a memory of that build into a slot (slot.ts tells why).
 */
import type { IfPlain } from './plain-text.ts'

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
