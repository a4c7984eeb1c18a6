/** How to reach a producer or a laboratory, in one line of text. */

/** @returns undefined where neither is on record */
export function contactWords({
  telephone,
  mail,
}: {
  readonly telephone?: string
  readonly mail?: string
}): string | undefined {
  const known = [telephone, mail].filter((part) => part !== undefined)
  return known.length === 0 ? undefined : known.join(', ')
}
