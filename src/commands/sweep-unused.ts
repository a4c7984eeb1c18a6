/** Removes the parts that no document on record refers to. */
import { issuedReader } from '../records/issued/read-document.ts'
import type { Records } from '../records/records.ts'
import { readContent } from './read-content.ts'
import { sweep } from './write-revision.ts'

/**
 * Leaves all of them where a record has a fault: what its revisions refer to is not known then.
 * @returns how many were removed
 */
export function sweepUnused(contentDir: string): number {
  const { records, errors } = readContent(contentDir)
  return errors === 0 ? sweep(contentDir, usedParts(records)) : 0
}

/** Digests of the parts of every revision of every lot. */
function usedParts({ contentDir, lots }: Records): Set<string> {
  const reader = issuedReader(contentDir)
  const used = new Set<string>()
  for (const [lot, { revisions = [] }] of lots)
    for (const { number } of revisions) for (const digest of reader.parts(lot, number)) used.add(digest)
  return used
}
