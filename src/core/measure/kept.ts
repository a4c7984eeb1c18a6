/** Values made once for a key and kept with it. */

/** What `kept` needs of a map; a WeakMap lets its values go with their keys. */
interface Store<Key, Value> {
  get(key: Key): Value | undefined
  set(key: Key, value: Value): unknown
}

/**
 * The value kept for a key, made where there is none.
 * @param store filled here
 * @param make the value, which depends on the key alone
 */
export function kept<Key, Value extends object>(
  store: Store<Key, Value>,
  key: Key,
  make: () => Value,
): Value {
  const known = store.get(key)
  if (known !== undefined) return known
  const made = make()
  store.set(key, made)
  return made
}
