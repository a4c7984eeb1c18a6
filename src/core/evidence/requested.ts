/** Optional clauses that purchasers ask for. */

/** Ids of clauses, by set. */
export type Requested = Readonly<Record<string, readonly string[]>>

/**
 * The clauses that a record asks for.
 * @param invoked sets, each with the optional clauses asked for, if any
 * @returns by set, without those of which none is asked for
 */
export function requestedBy(
  invoked: readonly { readonly set: string; readonly requested?: readonly string[] }[],
): Requested {
  return invoked.reduce<Requested>(
    (all, { set, requested = [] }) =>
      requested.length === 0 ? all : requestedTogether(all, { [set]: requested }),
    {},
  )
}

/**
 * What two places ask for, together.
 * @param a,b for instance the source's purchasers and those of a lot
 * @returns each clause once, by set
 */
export function requestedTogether(a: Requested, b: Requested): Requested {
  const sets = [...new Set([...Object.keys(a), ...Object.keys(b)])]
  return Object.fromEntries(
    sets.map((set) => [set, [...new Set([...(a[set] ?? []), ...(b[set] ?? [])])]] as const),
  )
}
