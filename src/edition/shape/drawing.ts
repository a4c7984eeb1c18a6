/** Pages that are drawn from one plain value alone, their view: where the view is the same, so is the page. */
import type { IfPlain } from './plain-text.ts'

export interface PageFromView<View> {
  readonly params: Readonly<Record<string, string>>
  /** Makes it anew at each call, so that the views of all pages are never in memory together. */
  readonly view: () => View
}

/** The paths of a route, each with its view. */
export function pagesToDraw<View>(
  pages: readonly PageFromView<View>[] & IfPlain<View>,
): { params: Record<string, string>; props: { view: () => View } }[] {
  return pages.map(({ params, view }) => ({ params: { ...params }, props: { view } }))
}
