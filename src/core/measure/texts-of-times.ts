/** Plain data of the site's own files: moments and ages as the texts that records write. */
import type { Age } from './age.ts'
import type { Moment } from './moment.ts'

/** A type with every moment and age in it as its text, which is what JSON makes of it. */
export type WithTexts<T> = T extends Moment | Age
  ? string
  : T extends object
    ? { readonly [Key in keyof T]: WithTexts<T[Key]> }
    : T

/** The same data with the text of every moment and age in place of it. @param data plain data without functions */
export function withTexts<T>(data: T): WithTexts<T> {
  // The type says what happens member by member; TypeScript cannot follow it through `map` and `fromEntries`.
  return textsOf(data) as WithTexts<T>
}

/**
 * Whether a member of some data is a moment or an age and not plain data, so that a copy must not go into it.
 * Note: asked of its shape and not of its class, since pages are built with a copy of the classes of their own.
 */
export function isTime(value: object): value is Moment | Age {
  return 'text' in value && 'toJSON' in value
}

function textsOf(value: unknown): unknown {
  if (typeof value !== 'object' || value === null) return value
  if (isTime(value)) return value.text
  if (Array.isArray(value)) return value.map(textsOf)
  return Object.fromEntries(Object.entries(value).map(([key, member]) => [key, textsOf(member)]))
}
