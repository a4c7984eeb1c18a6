/** A page for each source, as its address and what it is given. */
import type { Edition } from '../shape/edition.ts'

export interface PageOfSource {
  readonly params: { readonly source: string }
  readonly props: { readonly id: string }
}

export function pagesOfSources({ sources }: Pick<Edition, 'sources'>): PageOfSource[] {
  return [...sources.keys()].map((id) => ({ params: { source: id }, props: { id } }))
}
