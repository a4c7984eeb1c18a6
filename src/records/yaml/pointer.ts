/** JSON pointers: where a value stands in a record. */

/**
 * Pointer to a member of a mapping, or to an item of a list.
 * @param pointer of the mapping or list; empty for the record itself
 * Source: RFC 6901, section 3.
 */
export function below(pointer: string, key: string | number): string {
  return `${pointer}/${escapedKey(String(key))}`
}

/** Pointer to the value that a path of keys and places leads to. */
export function pointerTo(path: readonly (string | number)[]): string {
  return path.reduce<string>((pointer, part) => below(pointer, part), '')
}

/** A key as it stands in a pointer. Note: nearly no key holds either sign, and records have very many keys. */
export function escapedKey(key: string): string {
  return /[~/]/.test(key) ? key.replaceAll('~', '~0').replaceAll('/', '~1') : key
}

/** Pointer to the mapping or list that holds a value; empty for the record itself. */
export function above(pointer: string): string {
  return pointer.slice(0, Math.max(0, pointer.lastIndexOf('/')))
}

/** The key that a pointer ends in; empty for the record itself. */
export function lastKey(pointer: string): string {
  return pointer
    .slice(pointer.lastIndexOf('/') + 1)
    .replaceAll('~1', '/')
    .replaceAll('~0', '~')
}
