/** Texts that a new record is laid out with and that its owner has still to replace: "<your name>". */
import { below } from './pointer.ts'

export interface Placeholder {
  readonly pointer: string
  readonly text: string
}

/** Nobody's name begins so; a bound, "< 0.1 %", has no closing bracket. */
const PLACEHOLDER = /^<your [^<>]+>$/

/** The placeholders in a record, in its order. @param value any, written or loaded */
export function placeholdersIn(value: unknown): Placeholder[] {
  // Hardly any record has one, and each is asked.
  return hasPlaceholder(value) ? placeholdersBelow(value, '') : []
}

function hasPlaceholder(value: unknown): boolean {
  if (typeof value === 'string') return PLACEHOLDER.test(value)
  if (typeof value !== 'object' || value === null) return false
  return Object.values(value).some(hasPlaceholder)
}

function placeholdersBelow(value: unknown, pointer: string): Placeholder[] {
  if (typeof value === 'string') return PLACEHOLDER.test(value) ? [{ pointer, text: value }] : []
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([key, member]) => placeholdersBelow(member, below(pointer, key)))
}
