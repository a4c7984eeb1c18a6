/** Values made when somebody asks. */

/**
 * A value that is made when it is first asked for, and kept.
 * @param make the value, which depends on nothing that changes
 */
export function once<Value>(make: () => Value): () => Value {
  let made: { readonly value: Value } | undefined
  return () => {
    made ??= { value: make() }
    return made.value
  }
}
