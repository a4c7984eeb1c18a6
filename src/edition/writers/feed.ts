/** Atom feed of certificates: new, completed, withdrawn. */
import { Feed } from 'feed'
import { fullAddress, paths } from '../shape/addresses.ts'
import type { Edition, LotEntry, Revision } from '../shape/edition.ts'

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
      title: `${lot.id}, revision ${revision.number}: ${whatHappened(revision)}`,
      description: revision.reason,
      date: atMidnight(revision.date),
    })
  }
  return feed.atom1()
}

function newestRevisions(edition: Edition): { lot: LotEntry; revision: Revision }[] {
  return [...edition.lots.values()]
    .flatMap((lot) => lot.revisions.map((revision) => ({ lot, revision })))
    .sort((a, b) =>
      a.revision.date === b.revision.date
        ? a.lot.id < b.lot.id
          ? -1
          : 1
        : a.revision.date < b.revision.date
          ? 1
          : -1,
    )
    .slice(0, ENTRIES)
}

function whatHappened(revision: Revision): string {
  return revision.state === 'superseded' ? 'issued, since superseded' : revision.state
}

function atMidnight(date: string): Date {
  return new Date(`${date}T00:00:00Z`)
}
