/** Atom feed of certificates: new, completed, withdrawn. */
import { compareMoments, type Moment } from '../../core/measure/moment.ts'
import { Feed } from 'feed'
import { fullAddress, paths } from '../shape/addresses.ts'
import type { Edition, LotEntry, Revision } from '../shape/edition.ts'
import { listedLot } from '../shape/listing.ts'
import { standingOf } from '../shape/standing.ts'

/** Entries kept, newest first. */
const ENTRIES = 100

/** The feed's text; null where the site has no address yet, since entries need permanent ones. */
export function certificateFeed(edition: Edition): string | null {
  const home = fullAddress(edition, paths.front)
  if (home === null) return null
  const feed = new Feed({
    id: home,
    link: home,
    title: edition.site.title,
    copyright: edition.site.notice ?? '',
    updated: atMidnight(edition.asOf),
    feedLinks: { atom: `${home}${paths.feed}` },
    generator: edition.program,
  })
  for (const { lot, revision } of newestRevisions(edition)) {
    const address = `${home}${lot.revisions.at(-1) === revision ? paths.certificate(lot.id) : paths.revision(lot.id, revision.number)}`
    feed.addItem({
      id: `${home}${paths.revision(lot.id, revision.number)}`,
      link: address,
      title: `${lot.id}, revision ${revision.number}: ${whatHappened(edition, lot, revision)}`,
      description: revision.reason,
      date: atMidnight(revision.date),
    })
  }
  return feed.atom1()
}

interface LotRevision {
  readonly lot: LotEntry
  readonly revision: Revision
}

/** A revision among the newest of all belongs to one of the lots that were revised last. */
function newestRevisions(edition: Edition): LotRevision[] {
  const last = [...edition.lots.values()]
    .flatMap(({ id, issued }) => (issued === null ? [] : [{ id, date: issued.date }]))
    .sort(newestFirst)
    .slice(0, ENTRIES)
    .map(({ id }) => edition.lot(id))
  return last
    .flatMap((lot) => lot.revisions.map((revision) => ({ id: lot.id, date: revision.date, lot, revision })))
    .sort(newestFirst)
    .slice(0, ENTRIES)
}

/** Order of date, the latest first, then of the lot's id by code unit. */
function newestFirst(a: { id: string; date: Moment }, b: { id: string; date: Moment }): number {
  const later = compareMoments(b.date, a.date)
  if (later !== 0) return later
  return a.id < b.id ? -1 : a.id === b.id ? 0 : 1
}

/** The newest revision is the lot's; what an earlier one said counts no more. */
function whatHappened(edition: Edition, lot: LotEntry, revision: Revision): string {
  return lot.revisions.at(-1) === revision
    ? standingOf(edition, listedLot(lot)).text
    : 'issued, since superseded'
}

function atMidnight(date: Moment): Date {
  return new Date(date.day * 86_400_000)
}
