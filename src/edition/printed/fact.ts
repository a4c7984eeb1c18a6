/** One particular of a definition list; what a record lacks has no text, and the page says so. */
import { defined } from '../../core/measure/defined.ts'
import type { PrintedFact } from '../shape/printed-certificate.ts'

/** @param parts joined by `separator`; null or empty ones are left out, and without any the fact is missing */
export function fact(label: string, parts: readonly (string | null)[], separator = ', '): PrintedFact {
  const known = parts.filter((part) => part !== null && part !== '')
  return defined({ label, text: known.length === 0 ? undefined : known.join(separator) })
}

/** A particular that not every lot has. */
export function ifStated(label: string, text: string | null): PrintedFact[] {
  return text === null || text === '' ? [] : [{ label, text }]
}
