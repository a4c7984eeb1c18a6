/** Names for the elements of an array of objects, so that a pointer reads by id instead of by place. */

type Members = Readonly<Record<string, unknown>>

/** Ways to name an element, best first: lots, results, verdicts, points of a history, revisions, series. */
const NAMINGS: readonly ((element: Members) => unknown)[] = [
  (element) => element['id'],
  (element) => element['key'],
  (element) => element['criterion'],
  (element) => element['lot'],
  (element) => element['number'],
  (element) =>
    typeof element['property'] === 'string'
      ? [element['property'], element['condition'], element['age']]
          .filter((part) => typeof part === 'string')
          .join('|')
      : undefined,
]

/**
 * Names for both arrays by the first way that names every element of both.
 * @returns null where the elements have no such members; they are then compared by place
 */
export function elementNames(
  was: readonly unknown[],
  is: readonly unknown[],
): { was: string[]; is: string[] } | null {
  if (was.length + is.length === 0) return null
  for (const naming of NAMINGS) {
    const names = { was: namesBy(naming, was), is: namesBy(naming, is) }
    if (names.was !== null && names.is !== null) return { was: names.was, is: names.is }
  }
  return null
}

/** The second element of the same name gets "#2", so that none hides another. */
function namesBy(naming: (element: Members) => unknown, array: readonly unknown[]): string[] | null {
  const seen = new Map<string, number>()
  const names: string[] = []
  for (const element of array) {
    if (typeof element !== 'object' || element === null || Array.isArray(element)) return null
    const name = naming(element as Members)
    if (typeof name !== 'string' && typeof name !== 'number') return null
    const count = (seen.get(`${name}`) ?? 0) + 1
    seen.set(`${name}`, count)
    names.push(count === 1 ? `${name}` : `${name}#${count}`)
  }
  return names
}
