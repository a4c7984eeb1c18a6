/** The list of sources, and every lot of a source under one criterion. */
import type { Criterion } from '../../core/criteria/criterion.ts'
import { listedSetName } from '../../words/outcomes.ts'
import type { MaterialKind } from '../../core/measure/material-kind.ts'
import { defined } from '../../core/measure/defined.ts'
import type { LotStanding } from '../../words/standing.ts'
import type { Edition, ListedLot, ListedSource } from '../shape/edition.ts'
import { standingOf } from '../shape/standing.ts'
import { type LotLine, lotLinesUnder } from './lot-lines.ts'
import { countByYear, sampledIn, yearsOf } from './years.ts'

export interface SourceLine {
  readonly id: string
  readonly name: string
  /** Name of the producer. */
  readonly producer?: string
  readonly kind: MaterialKind
  readonly class: string | null
  readonly lotCount: number
  /** null without a lot. */
  readonly last: Pick<ListedLot, 'id' | 'number' | 'sampled'> | null
  /** State and governing verdict of the last lot; null without a lot. */
  readonly standing: LotStanding | null
}

export function sourceLines(edition: Edition): SourceLine[] {
  return [...edition.sources.values()].map((source) => sourceLine(edition, source))
}

function sourceLine(edition: Edition, { id, name, producer, kind, ...source }: ListedSource): SourceLine {
  const lots = edition.lotsOf(id)
  const last = lots.at(-1) ?? null
  return defined({
    id,
    name,
    producer: edition.producers.get(producer)?.name,
    kind,
    class: source.class ?? null,
    lotCount: lots.length,
    last,
    standing: last === null ? null : standingOf(edition, last),
  })
}

export interface SourceUnder {
  readonly source: string
  readonly criterion: string
  /** null of the page that stands for all years. */
  readonly year: string | null
}

/** Lots up to which one page lists them all; beyond, each year has a page. */
const ON_ONE_PAGE = 300

/** Every source and criterion that has a page, those its lots are judged under, and the years of a long history. */
export function sourcesUnder({ sources, lotsOf }: Pick<Edition, 'sources' | 'lotsOf'>): SourceUnder[] {
  return [...sources.values()].flatMap(({ id, criteria }) => {
    const lots = lotsOf(id)
    const years = lots.length <= ON_ONE_PAGE ? [] : yearsOf(lots.map(({ sampled }) => sampled))
    return criteria.flatMap((criterion) => [null, ...years].map((year) => ({ source: id, criterion, year })))
  })
}

export interface SourceUnderView {
  readonly name: string
  readonly criterion: Pick<Criterion, 'id' | 'title' | 'edition'> & { readonly name: string }
  /** The one year that is listed, of a history too long for a page; null where every lot is. */
  readonly only: string | null
  /** Those listed, the latest first, and so the lots in each. */
  readonly years: readonly { readonly year: string; readonly lots: readonly LotLine[] }[]
  /** Those that have lots, the latest first; counted on the page of all alone, since another lot in one changes no other. */
  readonly allYears: readonly { readonly year: string; readonly count: number | null }[]
}

/**
 * All years where one page has room for them, else the year that is asked for, or the newest.
 * @throws RangeError for a criterion that is not on record
 */
export function sourceUnderView(
  edition: Edition,
  { source, criterion: id, year: asked }: SourceUnder,
): SourceUnderView {
  const criterion = edition.criteria.get(id)
  if (criterion === undefined) throw new RangeError(`sourceUnderView needs a criterion on record, got ${id}`)
  const lots = edition.lotsOf(source)
  const sampled = lots.map((lot) => lot.sampled)
  const years = yearsOf(sampled)
  const counts = countByYear(sampled, years)
  const only = lots.length <= ON_ONE_PAGE ? null : (asked ?? years[0] ?? null)
  return {
    name: edition.sources.get(source)?.name ?? source,
    criterion: { id, title: criterion.title, edition: criterion.edition, name: listedSetName(criterion) },
    only,
    years: (only === null ? years : [only]).map((year) => ({
      year,
      lots: lotLinesUnder(edition, sampledIn(lots, year), id),
    })),
    allYears: years.map((year, place) => ({ year, count: asked === null ? (counts[place] ?? 0) : null })),
  }
}
