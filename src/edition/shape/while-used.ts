/** Values made for an id and kept for as long as somebody holds them, or the memory is not wanted. */

/**
 * A page that asks for the same lot for each of its shipments gets what was made for the first, and so do the pages of a
 * source's lots that ask for it one after the other; an edition of many lots stays light, since nothing here keeps a
 * value alive.
 * @param make the value, which depends on the id alone
 */
export function whileUsed<Value extends object>(make: (id: string) => Value): (id: string) => Value {
  const made = new Map<string, WeakRef<Value>>()
  return (id) => {
    const known = made.get(id)?.deref()
    if (known !== undefined) return known
    const value = make(id)
    made.set(id, new WeakRef(value))
    return value
  }
}
