/** The method pages in the order that their writers gave them. */
import { link, paths } from '../shape/addresses.ts'
import type { Edition } from '../shape/edition.ts'

export interface ListedMethod {
  readonly title: string
  readonly href: string
  readonly summary: string
}

/** By order, then by id. */
export function methodList(edition: Pick<Edition, 'address' | 'methods'>): ListedMethod[] {
  return edition.methods
    .toSorted((a, b) => a.order - b.order || (a.id < b.id ? -1 : 1))
    .map(({ id, title, summary }) => ({ title, href: link(edition, paths.method(id)), summary }))
}
