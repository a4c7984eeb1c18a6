/** A lot's id is SOURCE/LOT. */

/** The source that a lot belongs to. */
export function sourceOf(lot: string): string {
  return lot.slice(0, lot.indexOf('/'))
}

/** The lot's name within its source. */
export function nameInSource(lot: string): string {
  return lot.slice(lot.indexOf('/') + 1)
}
