/** Leaves out what is not known. */

/**
 * The members of an object that have a value, so that one that is not known is absent rather than `undefined`.
 * @param members plain object; not changed
 */
export function defined<T extends object>(members: T): Defined<T> {
  const kept: Record<string, unknown> = {}
  for (const [key, value] of Object.entries(members)) if (value !== undefined) kept[key] = value
  return kept as Defined<T>
}

type Optional<T> = { [K in keyof T]: undefined extends T[K] ? K : never }[keyof T]

/** What `defined` gives: members that may be undefined become optional ones. */
export type Defined<T> = Omit<T, Optional<T>> & { [K in Optional<T>]?: Exclude<T[K], undefined> }
