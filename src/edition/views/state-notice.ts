/** What stands over a certificate today: a later revision, or a withdrawal since. */
import { date } from '../../words/dates.ts'
import { fullSentence } from '../../words/sentences.ts'
import { paths } from '../shape/addresses.ts'
import type { Certificate, Edition, LotEntry } from '../shape/edition.ts'
import { type Linked, linked } from './linked.ts'

export interface StateNotice {
  /** Number and date of the revision in force. */
  readonly by: string
  /** The revision that the page shows. */
  readonly revision: number
  readonly inForce: Linked
  /** When and why the lot was withdrawn by a later revision. */
  readonly withdrawn: { readonly on: string; readonly reason: string } | null
}

type Named = Pick<LotEntry, 'id' | 'number' | 'state' | 'revisions'>

/** @returns null for the revision in force, and for a draft */
export function stateNotice(
  edition: Pick<Edition, 'address'>,
  entry: Named,
  { revision }: Pick<Certificate, 'revision'>,
): StateNotice | null {
  const newest = entry.revisions.at(-1)
  if (newest === undefined || revision === null || newest.number <= revision) return null
  return {
    by: `revision ${newest.number} of ${date(newest.date)}`,
    revision,
    inForce: linked(edition, entry.number, paths.certificate(entry.id)),
    withdrawn:
      entry.state === 'withdrawn' ? { on: date(newest.date), reason: fullSentence(newest.reason) } : null,
  }
}
