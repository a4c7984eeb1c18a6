/** What a reader must know before anything else: superseded, withdrawn, or a draft. */
import { date } from '../../words/dates.ts'
import { storedSentence } from '../../words/stored-text.ts'
import { paths } from '../shape/addresses.ts'
import type { CertificateDocument } from '../shape/document.ts'
import type { Edition, LotEntry } from '../shape/edition.ts'
import { type Linked, linked } from './linked.ts'

export interface StateNotice {
  readonly superseded: {
    /** Number and date of the revision in force. */
    readonly by: string
    readonly revision: number
    readonly inForce: Linked
  } | null
  readonly withdrawn: {
    readonly on: string
    readonly reason: string
    readonly replacement: Linked | null
  } | null
  readonly draft: boolean
}

type Named = Pick<LotEntry, 'id' | 'number' | 'state' | 'revisions'>

export function stateNotice(
  edition: Pick<Edition, 'address' | 'lots'>,
  entry: Named,
  document: Pick<CertificateDocument, 'revision' | 'state' | 'replacedBy'>,
): StateNotice {
  const newest = entry.revisions.at(-1)
  return {
    superseded:
      newest === undefined || document.revision === null || !isSuperseded(entry, document)
        ? null
        : {
            by: `revision ${newest.number} of ${date(newest.date)}`,
            revision: document.revision,
            inForce: linked(edition, entry.number, paths.certificate(entry.id)),
          },
    withdrawn:
      newest === undefined || entry.state !== 'withdrawn'
        ? null
        : {
            on: date(newest.date),
            reason: storedSentence(newest.reason),
            replacement: replacement(edition, document.replacedBy ?? newest.replacedBy ?? null),
          },
    draft: document.state === 'draft',
  }
}

/** Whether a later revision than the document's is on record. */
export function isSuperseded(
  { revisions }: Pick<LotEntry, 'revisions'>,
  { revision }: Pick<CertificateDocument, 'revision'>,
): boolean {
  const newest = revisions.at(-1)
  return newest !== undefined && revision !== null && revision < newest.number
}

/** A lot that is not published is named by its id alone. */
function replacement(edition: Pick<Edition, 'address' | 'lots'>, id: string | null): Linked | null {
  if (id === null) return null
  const lot = edition.lots.get(id)
  return lot === undefined ? { text: id, href: null } : linked(edition, lot.number, paths.certificate(id))
}
