/**
 * Position of the first item not before a wanted one, found by halving.
 * @param list in rising order of `of`
 * @param of key of an item
 * @param wanted key to look for
 * @returns its index; the list's length where every item is before it
 */
export function firstAtOrAfter<Item, Key extends string | number>(
  list: readonly Item[],
  of: (item: Item) => Key,
  wanted: Key,
): number {
  let [low, high] = [0, list.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if (of(list[middle] as Item) < wanted) low = middle + 1
    else high = middle
  }
  return low
}
