/** Atom feed of certificates: new, completed, withdrawn. */
import { compareMoments, type Moment } from '../../core/measure/moment.ts'
import { fullAddress, paths } from '../shape/addresses.ts'
import type { Edition, LotEntry, Revision } from '../shape/edition.ts'
import { listedLot } from '../shape/listing.ts'
import { standingOf } from '../shape/standing.ts'
import { plainSpaces } from '../../words/sentences.ts'
import { decidedByInWords } from '../shape/verdict-words.ts'
import { emptyElement, xmlElement } from './xml.ts'
import { partOfSource } from '../shape/part-of-source.ts'

/** Entries kept, newest first. */
const ENTRIES = 100

/**
 * The feed's text; null where the site has no address yet, since entries need permanent ones, and for the internal
 * edition, which nobody subscribes to.
 * Source: RFC 4287 (Atom), sections 4.1.1 and 4.1.2: what a feed and an entry must hold.
 */
export function certificateFeed(edition: Edition): string | null {
  return feedText(edition, {
    title: edition.site.title,
    page: paths.front,
    feed: paths.feed,
    sources: [...edition.sources.keys()],
  })
}

/**
 * The same of one source alone; null where the whole site has none.
 * @throws RangeError for a source that is not in the edition
 */
export function sourceFeed(edition: Edition, source: string): string | null {
  const listed = edition.sources.get(source)
  if (listed === undefined) throw new RangeError(`sourceFeed needs a source of the edition, got ${source}`)
  return feedText(edition, {
    title: `${listed.name} · ${edition.site.title}`,
    page: paths.source(source),
    feed: paths.sourceFeed(source),
    sources: [source],
  })
}

/** What a feed is about. */
interface FeedOf {
  readonly title: string
  /** Paths of the page that it follows, and of its own. */
  readonly page: string
  readonly feed: string
  readonly sources: readonly string[]
}

function feedText(edition: Edition, { title, page, feed, sources }: FeedOf): string | null {
  const home = fullAddress(edition, paths.front)
  if (home === null || edition.audience === 'internal') return null
  const { title: author, notice } = edition.site
  return [
    '<?xml version="1.0" encoding="utf-8"?>',
    '<feed xmlns="http://www.w3.org/2005/Atom">',
    xmlElement('id', `${home}${page}`),
    xmlElement('title', title, PLAIN),
    xmlElement('updated', atMidnight(edition.asOf)),
    `<author>${xmlElement('name', author)}</author>`,
    emptyElement('link', { rel: 'alternate', type: 'text/html', href: `${home}${page}` }),
    emptyElement('link', { rel: 'self', type: 'application/atom+xml', href: `${home}${feed}` }),
    xmlElement('generator', edition.program),
    ...(notice === undefined ? [] : [xmlElement('rights', notice, PLAIN)]),
    ...newestOf(sources.flatMap((source) => entriesOf(edition, source))).map(({ text }) => text),
    '</feed>\n',
  ].join('\n')
}

/** Text, not markup: what a record says is shown as it stands. */
const PLAIN = { type: 'text' }

function entry(edition: Edition, home: string, { lot, revision }: LotRevision): string {
  const permanent = `${home}${paths.revision(lot.id, revision.number)}`
  const isNewest = lot.revisions.at(-1) === revision
  const title = `${lot.id}, revision ${revision.number}: ${whatHappened(edition, lot, revision)}`
  return [
    '<entry>',
    xmlElement('id', permanent),
    xmlElement('title', title, PLAIN),
    xmlElement('updated', atMidnight(revision.date)),
    emptyElement('link', {
      rel: 'alternate',
      type: 'text/html',
      href: isNewest ? `${home}${paths.certificate(lot.id)}` : permanent,
    }),
    xmlElement('summary', summary(edition, lot, revision), PLAIN),
    '</entry>',
  ].join('\n')
}

/** Why the revision was made, and, of the one in force, which clauses decided. */
function summary(edition: Edition, lot: LotEntry, revision: Revision): string {
  const [governing] = lot.verdicts
  if (lot.revisions.at(-1) !== revision || governing === undefined || governing.decidedBy.length === 0)
    return revision.reason
  if (governing.outcome === 'meets' || !edition.criteria.has(governing.criterion)) return revision.reason
  return `${revision.reason}; decided by: ${plainSpaces(decidedByInWords(edition, governing))}`
}

interface LotRevision {
  readonly lot: LotEntry
  readonly revision: Revision
}

interface FeedEntry {
  readonly id: string
  readonly date: Moment
  readonly text: string
}

/** Entries of the newest revisions of a source. */
const entriesOf = partOfSource('feed', (edition: Edition, source): readonly FeedEntry[] => {
  const home = fullAddress(edition, paths.front)
  if (home === null) return []
  const dated = edition
    .lotsOf(source)
    .flatMap(({ id, issued }) => (issued === null ? [] : [{ id, date: issued.date }]))
  // A revision among the newest of all belongs to one of the lots that were revised last.
  const last = newestOf(dated).map(({ id }) => edition.lot(id))
  const revised = last.flatMap((lot) =>
    lot.revisions.map((revision) => ({ id: lot.id, date: revision.date, lot, revision })),
  )
  return newestOf(revised).map(({ id, date, ...one }) => ({ id, date, text: entry(edition, home, one) }))
})

function newestOf<Dated extends { readonly id: string; readonly date: Moment }>(
  all: readonly Dated[],
): Dated[] {
  return [...all].sort(newestFirst).slice(0, ENTRIES)
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

/** A date-construct of RFC 3339, as section 3.3 of RFC 4287 asks for. */
function atMidnight(date: Moment): string {
  return new Date(date.day * 86_400_000).toISOString()
}
