/** Labels in one column that make room for each other. */

/**
 * Places of labels, each as near its own as its neighbours leave it, in the order of the wishes.
 * @param wishes middles of the labels, pixels down, in any order
 * @param apart least distance of two
 * @returns in the order of the wishes; null where not all have room
 */
export function dodged(
  wishes: readonly number[],
  apart: number,
  { top, bottom }: { readonly top: number; readonly bottom: number },
): number[] | null {
  if (bottom - top < (wishes.length - 1) * apart) return null
  // Groups of labels that touch stand about the mean of their wishes, as far as the ends let them.
  const groups: { readonly wishes: number[]; start: number }[] = []
  const order = wishes.map((_, place) => place).toSorted((a, b) => (wishes[a] ?? 0) - (wishes[b] ?? 0))
  const startOf = (own: readonly number[]) => {
    const height = (own.length - 1) * apart
    const middle = own.reduce((total, one) => total + one, 0) / own.length
    return Math.min(Math.max(middle - height / 2, top), bottom - height)
  }
  for (const place of order) {
    const wish = wishes[place] ?? 0
    groups.push({ wishes: [wish], start: startOf([wish]) })
    for (;;) {
      const [before, last] = [groups.at(-2), groups.at(-1)]
      if (before === undefined || last === undefined) break
      if (before.start + before.wishes.length * apart <= last.start) break
      groups.splice(-2, 2, { wishes: [...before.wishes, ...last.wishes], start: 0 })
      const joined = groups.at(-1)
      if (joined !== undefined) joined.start = startOf(joined.wishes)
    }
  }
  const places = groups.flatMap(({ wishes: own, start }) => own.map((_, row) => start + row * apart))
  const found = new Map(order.map((place, row) => [place, places[row] ?? 0]))
  return wishes.map((wish, place) => found.get(place) ?? wish)
}
