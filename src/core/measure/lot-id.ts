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
