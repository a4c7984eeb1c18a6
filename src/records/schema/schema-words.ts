/** Values and places in the words of a diagnostic. */
import type { ErrorObject } from './schemas.ts'

/** A text in a message, cut where it is long. */
export function shortened(text: string): string {
  return text.length > 60 ? `${text.slice(0, 57)}...` : text
}

/** A value in a message, cut where it is long. */
export function valueWords(value: unknown): string {
  if (typeof value === 'string') return `the text "${shortened(value)}"`
  if (Array.isArray(value)) return 'a list'
  return typeof value === 'object' && value !== null ? 'a mapping' : String(value)
}

/** The key below which a fault lies, where it lies below one. */
export function inWords(pointer: string): string {
  const last = pointer
    .split('/')
    .filter((part) => !/^\d+$/.test(part))
    .at(-1)
  return last === undefined || last === '' ? '' : ` in ${shortened(last)}`
}

/** A longer description is a list for editors, such as that of all properties. */
const LONGEST_DESCRIPTION = 300

/** What the schema says that it expects; empty where it says nothing short. */
export function description(error: ErrorObject): string {
  const text = (error.parentSchema as { description?: string } | undefined)?.description
  return text === undefined || LONGEST_DESCRIPTION < text.length
    ? ''
    : `expected: ${text[0]?.toLowerCase()}${text.slice(1)}`
}
