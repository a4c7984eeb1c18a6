/** Canonical JSON and its digest: what an issued document is stored as and known by. */
import { createHash, type Hash } from 'node:crypto'
import canonicalize from 'canonicalize'

/**
 * The one text of a plain JSON value: keys in code-unit order, no white space, numbers as ECMAScript prints
 * them.
 * @throws RangeError for a value that JSON cannot hold
 * Source: RFC 8785.
 */
export function canonicalJson(value: unknown): string {
  const text = canonicalize(value)
  if (text === undefined) throw new RangeError('canonicalJson needs a JSON value, got undefined')
  return text
}

/** SHA-256 (FIPS 180-4) of bytes, or of a text's UTF-8 bytes, as "sha256-" and 64 hexadecimal digits. */
export function digestOf(content: string | Uint8Array): string {
  return digestIn(createHash('sha256').update(content))
}

/** The same of all that a SHA-256 hash was given, which takes nothing more. */
export function digestIn(hash: Hash): string {
  return `sha256-${hash.digest('hex')}`
}
