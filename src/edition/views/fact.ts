/** One particular of a definition list; what a record lacks is null, and the page says so. */
import type { Linked } from './linked.ts'

export interface Fact {
  readonly label: string
  readonly text: string | null
  /** Stands before the text. */
  readonly lead?: Linked
  /** Takes the whole width of the list. */
  readonly wide?: true
}

/** @param parts joined by `separator`; null or empty ones are left out, and without any the fact is missing */
export function fact(label: string, parts: readonly (string | null)[], separator = ', '): Fact {
  const known = parts.filter((part) => part !== null && part !== '')
  return { label, text: known.length === 0 ? null : known.join(separator) }
}
