/** A text that leads to a page where the site has one. */
import { link } from '../shape/addresses.ts'
import type { Edition } from '../shape/edition.ts'

export interface Linked {
  readonly text: string
  readonly href: string | null
}

/** @param path relative to the site's base; null where the site has no such page */
export function linked(edition: Pick<Edition, 'address'>, text: string, path: string | null): Linked {
  return { text, href: path === null ? null : link(edition, path) }
}
