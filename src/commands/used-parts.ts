/** The parts that the documents on record refer to. */
import { issuedReader } from '../records/issued/read-document.ts'
import { readGoodContent } from './read-content.ts'

/** Digests of the parts of every revision of every lot. */
export function usedParts(contentDir: string): Set<string> {
  const { lots } = readGoodContent(contentDir, 'Unused parts were left where they are.')
  const reader = issuedReader(contentDir)
  const used = new Set<string>()
  for (const [lot, { revisions = [] }] of lots)
    for (const { number } of revisions) for (const digest of reader.parts(lot, number)) used.add(digest)
  return used
}
