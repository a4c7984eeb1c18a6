/** What stood on an earlier site and does not stand on a later one. */
import { pageFile } from '../shape/addresses.ts'
import type { IssuedLot, IssuedState, Manifest } from './manifest.ts'

/** Something of an issued certificate that was lost or exchanged; `number` is the revision's. */
export type Loss =
  | { readonly what: 'lot-vanished' | 'withdrawal-undone'; readonly lot: string }
  | {
      readonly what: 'revision-vanished' | 'document-exchanged' | 'date-changed'
      readonly lot: string
      readonly number: number
    }

/** In order of lot and revision; a lot that was renamed is sought by its earlier id. */
export function lossesBetween(before: IssuedState, after: IssuedState): Loss[] {
  const present = new Map(
    Object.entries(after.lots).flatMap(([id, lot]) => [id, ...lot.formerly].map((name) => [name, lot])),
  )
  return Object.entries(before.lots).flatMap(([lot, issued]) =>
    lossesOf(lot, issued, Object.hasOwn(after.lots, lot) ? after.lots[lot] : present.get(lot)),
  )
}

function lossesOf(lot: string, before: IssuedLot, after: IssuedLot | undefined): Loss[] {
  if (after === undefined) return [{ what: 'lot-vanished', lot }]
  const now = new Map(after.revisions.map((revision) => [revision.number, revision]))
  const losses = before.revisions.flatMap(({ number, date, digest }): Loss[] => {
    const same = now.get(number)
    if (same === undefined) return [{ what: 'revision-vanished', lot, number }]
    if (same.digest !== digest) return [{ what: 'document-exchanged', lot, number }]
    return same.date === date ? [] : [{ what: 'date-changed', lot, number }]
  })
  const undone = before.state === 'withdrawn' && after.state !== 'withdrawn'
  return undone ? [...losses, { what: 'withdrawal-undone', lot }] : losses
}

/** Addresses of pages that the later site does not have. @param before addresses of pages of the earlier one */
export function vanishedPages(before: readonly string[], after: Pick<Manifest, 'files'>): string[] {
  return before.filter((address) => !Object.hasOwn(after.files, pageFile(address)))
}

/** Records that are not what they were, or no longer there, as FOLDER/ID; new ones are none of them. */
export function changedRecords(before: IssuedState, after: IssuedState): string[] {
  return Object.entries(before.records)
    .filter(([name, digest]) => after.records[name] !== digest)
    .map(([name]) => name)
}
