/** The list of sources, and every lot of a source under one criterion. */
import type { Criterion } from '../../core/criteria/criterion.ts'
import { listedSetName } from '../../words/outcomes.ts'
import type { MaterialKind } from '../../core/measure/material-kind.ts'
import { defined } from '../../core/measure/defined.ts'
import type { LotStanding } from '../../words/standing.ts'
import type { Edition, ListedLot, ListedSource } from '../shape/edition.ts'
import { standingOf } from '../shape/standing.ts'
import { type LotLine, lotLinesUnder } from './lot-lines.ts'
import { sampledIn, yearsOf } from './years.ts'

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
}

/** Every source and criterion that has a page: those its lots are judged under. */
export function sourcesUnder({ sources }: Pick<Edition, 'sources'>): SourceUnder[] {
  return [...sources.values()].flatMap(({ id, criteria }) =>
    criteria.map((criterion) => ({ source: id, criterion })),
  )
}

export interface SourceUnderView {
  readonly name: string
  readonly criterion: Pick<Criterion, 'id' | 'title' | 'edition'> & { readonly name: string }
  /** The latest first, and so the lots in each. */
  readonly years: readonly { readonly year: string; readonly lots: readonly LotLine[] }[]
}

/** @throws RangeError for a criterion that is not on record */
export function sourceUnderView(edition: Edition, { source, criterion: id }: SourceUnder): SourceUnderView {
  const criterion = edition.criteria.get(id)
  if (criterion === undefined) throw new RangeError(`sourceUnderView needs a criterion on record, got ${id}`)
  const lots = edition.lotsOf(source)
  return {
    name: edition.sources.get(source)?.name ?? source,
    criterion: { id, title: criterion.title, edition: criterion.edition, name: listedSetName(criterion) },
    years: yearsOf(lots.map(({ sampled }) => sampled)).map((year) => ({
      year,
      lots: lotLinesUnder(edition, sampledIn(lots, year), id),
    })),
  }
}
