/**
 * Parts that many documents share: each lies once under its digest, and a document holds the digest in its
 * place.
 */
import { canonicalJson, digestOf } from './digest.ts'

/** Stands in a document in place of a part. */
export interface PartReference {
  readonly part: string
}

/** Members of a document that are parts. */
export const SHARED = ['shared', 'lot', 'controls'] as const
export type SharedMember = (typeof SHARED)[number]

/** Texts by digest. */
export type Parts = ReadonlyMap<string, string>

/** A document with its parts taken out. */
export function withoutParts(document: object): { readonly document: unknown; readonly parts: Parts } {
  const parts = new Map<string, string>()
  const stored = Object.entries(document).map(([key, member]: [string, unknown]) => {
    if (!isShared(key)) return [key, member] as const
    const text = canonicalJson(member)
    const part = digestOf(text)
    parts.set(part, text)
    return [key, { part } satisfies PartReference] as const
  })
  return { document: Object.fromEntries(stored), parts }
}

/**
 * A document with its parts in their places.
 * @param partOf a part's value by digest and the member that it is
 */
export function withParts(
  document: object,
  partOf: (digest: string, member: SharedMember) => unknown,
): unknown {
  return Object.fromEntries(
    Object.entries(document).map(([key, member]: [string, unknown]) => [
      key,
      isShared(key) && isReference(member) ? partOf(member.part, key) : member,
    ]),
  )
}

/** Digests of the parts that a document as stored refers to. */
export function partsOf(document: object): string[] {
  return Object.entries(document).flatMap(([key, member]: [string, unknown]) =>
    isShared(key) && isReference(member) ? [member.part] : [],
  )
}

function isShared(key: string): key is SharedMember {
  return (SHARED as readonly string[]).includes(key)
}

function isReference(value: unknown): value is PartReference {
  return typeof value === 'object' && value !== null && 'part' in value && typeof value.part === 'string'
}
