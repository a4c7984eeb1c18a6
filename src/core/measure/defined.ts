/** Leaves out what is not known. */

/**
 * The members of an object that have a value, so that one that is not known is absent rather than `undefined`.
 * @param members plain object; not changed
 */
export function defined<T extends object>(members: T): Defined<T> {
  const kept: Record<string, unknown> = {}
  // Made for every result of every lot: a loop over the keys is four times as fast as one over entries.
  for (const key in members) {
    const value = members[key]
    if (value !== undefined) kept[key] = value
  }
  return kept as Defined<T>
}

type Optional<T> = { [K in keyof T]: undefined extends T[K] ? K : never }[keyof T]

/** What `defined` gives: members that may be undefined become optional ones. */
export type Defined<T> = Omit<T, Optional<T>> & { [K in Optional<T>]?: Exclude<T[K], undefined> }
