/** Reads issued documents with the parts they share. */
import { readIssued, readPart } from '../files.ts'
import { digestOf } from './digest.ts'
import { partsOf, type SharedMember, withParts } from './parts.ts'
import type { PrivatePart } from './private-part.ts'

export interface StoredDocument {
  /** Of the file's bytes. */
  readonly digest: string
  /** With every part in its place. */
  readonly document: unknown
}

export interface IssuedReader {
  /** The document of a revision; null where it or a part of it cannot be read. */
  readonly document: (lot: string, revision: number) => StoredDocument | null
  /** Digests of the parts that the document of a revision refers to, the private one too. */
  readonly parts: (lot: string, revision: number) => string[]
  /** A private part by its digest; null where it cannot be read. */
  readonly privatePart: (digest: string) => PrivatePart | null
}

/** A reader of one content folder; what the documents of a whole source share is read once. */
export function issuedReader(folder: string): IssuedReader {
  // Parts of single lots are not kept: ten thousand lots would fill the memory with what is read once or twice.
  const shared = new Map<string, unknown>()
  const partOf = (digest: string, member: SharedMember): unknown => {
    const kept = shared.get(digest)
    if (kept !== undefined) return kept
    const part = parsed(readPart(folder, digest))
    if (member === 'shared') shared.set(digest, part)
    return part
  }
  return {
    document: (lot, revision) => {
      const bytes = readIssued(folder, lot, revision)
      const stored = parsed(bytes)
      if (bytes === null || stored === null) return null
      let whole = true
      const document = withParts(stored, (digest, member) => {
        const part = partOf(digest, member)
        if (part === null) whole = false
        return part
      })
      return whole ? { digest: digestOf(bytes), document } : null
    },
    parts: (lot, revision) => {
      const stored = parsed(readIssued(folder, lot, revision))
      if (stored === null) return []
      return 'private' in stored ? [...partsOf(stored), String(stored.private)] : partsOf(stored)
    },
    privatePart: (digest) => parsed(readPart(folder, digest)) as PrivatePart | null,
  }
}

/** The JSON object in some bytes; null for anything else. */
function parsed(bytes: Buffer | null): object | null {
  if (bytes === null) return null
  try {
    const value: unknown = JSON.parse(bytes.toString('utf8'))
    return typeof value === 'object' ? value : null
  } catch {
    return null
  }
}
