/** A long list on a screen: its first entries, and how many more there are. */

/** Lines of a list that a screen shows with what stands around it. */
export const SCREEN_LINES = 20

/**
 * The first entries of a list that fill no more than a screen, at least one, and a line that counts the rest.
 * @param entries each of one line or several, which stay together
 * @param noun of what is counted, in the singular and the plural
 * @param most lines; Infinity for all
 */
export function folded(
  entries: readonly (readonly string[])[],
  [one, many]: readonly [string, string],
  most: number = SCREEN_LINES,
): string[] {
  let lines = 0
  const fits = entries.findIndex((entry, place) => {
    lines += entry.length
    return most < lines && 0 < place
  })
  if (fits < 0) return entries.flat()
  const rest = entries.length - fits
  return [
    ...entries.slice(0, fits).flat(),
    `... and ${rest} more ${rest === 1 ? one : many}; --all shows them`,
  ]
}
