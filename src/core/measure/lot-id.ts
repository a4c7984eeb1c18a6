/** A lot's id is SOURCE/LOT. */

/**
 * The source that a lot belongs to.
 * @param lot id SOURCE/LOT; that it has a slash is not checked
 */
export function sourceOf(lot: string): string {
  return lot.slice(0, lot.indexOf('/'))
}

/**
 * The lot's name within its source.
 * @param lot id SOURCE/LOT; without a slash it is the name
 */
export function nameInSource(lot: string): string {
  return lot.slice(lot.indexOf('/') + 1)
}

/**
 * The id that a lot has today.
 * @param lots by id, each with the ids that it had before
 * @param id that a lot has or had
 * @returns undefined where no lot has or had it
 */
export function presentId(
  lots: ReadonlyMap<string, { readonly formerly?: readonly string[] }>,
  id: string,
): string | undefined {
  if (lots.has(id)) return id
  return [...lots].find(([, { formerly }]) => formerly?.includes(id))?.[0]
}
