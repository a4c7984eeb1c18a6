/**
 * The private part of an issued document: what the document withholds, place by place, so that an edition that
 * may show it can put it back.
 */

/** Groups of facts that an issued document withholds; a lot not yet issued is named in no public edition. */
export const WITHHELD = ['persons', 'seals', 'purchase-order', 'drafts'] as const
export type Withheld = (typeof WITHHELD)[number]

/** A place in a document, as the keys that lead to it, and what stands there in full. */
export type Revealed = readonly [path: readonly (string | number)[], text: unknown]

export interface PrivatePart {
  readonly format: 2
  /** Chance, so that nobody can guess the names from the digest. */
  readonly salt: string
  /** The document that it belongs to. */
  readonly certificate: string
  readonly revision: number
  readonly persons?: readonly Revealed[]
  readonly seals?: readonly Revealed[]
  readonly 'purchase-order'?: readonly Revealed[]
  readonly drafts?: readonly Revealed[]
}

/** The smallest places at which two documents differ, with what stands there in the second. */
export function revealedIn(withheld: unknown, full: unknown): Revealed[] {
  if (Object.is(withheld, full)) return []
  if (!isTree(withheld) || !isTree(full) || !sameKeys(withheld, full)) return [[[], full]]
  return Object.keys(withheld).flatMap((key) =>
    revealedIn(withheld[key], full[key]).map(
      ([path, text]): Revealed => [[Array.isArray(withheld) ? Number(key) : key, ...path], text],
    ),
  )
}

function sameKeys(a: object, b: object): boolean {
  const keys = Object.keys(a)
  return keys.length === Object.keys(b).length && keys.every((key) => Object.hasOwn(b, key))
}

/** A copy of a document with the groups put back that an edition shows. */
export function withRevealed<Document>(
  document: Document,
  part: PrivatePart,
  groups: readonly Withheld[],
): Document {
  return groups
    .flatMap((group) => part[group] ?? [])
    .reduce((current, [path, text]) => replaced(current, path, text), document as unknown) as Document
}

function replaced(tree: unknown, [key, ...rest]: readonly (string | number)[], text: unknown): unknown {
  if (key === undefined) return text
  if (!isTree(tree) || !Object.hasOwn(tree, key)) return tree
  const next = replaced(tree[key], rest, text)
  if (Array.isArray(tree)) return tree.with(Number(key), next)
  return { ...tree, [key]: next }
}

function isTree(value: unknown): value is Record<string | number, unknown> {
  return typeof value === 'object' && value !== null
}
