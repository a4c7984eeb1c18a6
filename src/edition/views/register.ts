/** The register: lots by source and year of sampling, and what its filter offers. */
import { setName } from '../../core/criteria/criterion.ts'
import { everyMark, type StandingMark } from '../../words/standing.ts'
import type { Edition } from '../shape/edition.ts'
import { standingOf } from '../shape/standing.ts'
import { type LotLine, lotLines } from './lot-lines.ts'
import { countByYear, sampledIn, yearsOf } from './years.ts'

export interface SourceByYear {
  readonly id: string
  readonly name: string
  /** Lots or shipments of each year, in the order of the view's years. */
  readonly counts: readonly number[]
}

export interface RegisterView {
  readonly lotCount: number
  /** The latest first. */
  readonly years: readonly string[]
  readonly sources: readonly SourceByYear[]
  /** Criteria that lots are judged under, for the filter. */
  readonly criteria: readonly { readonly id: string; readonly name: string }[]
  /** Marks of states and outcomes that occur. */
  readonly marks: readonly StandingMark[]
}

export function registerView(edition: Edition): RegisterView {
  const lots = [...edition.lots.values()]
  const years = yearsOf(lots.map(({ sampled }) => sampled))
  const sources = [...edition.sources.values()]
  const used = new Set(
    lots.flatMap((lot) => lot.outcomes.map(({ criterion }) => standingOf(edition, lot, criterion).mark)),
  )
  return {
    lotCount: lots.length,
    years,
    sources: sources.map(({ id, name }) => ({
      id,
      name,
      counts: countByYear(
        edition.lotsOf(id).map(({ sampled }) => sampled),
        years,
      ),
    })),
    criteria: [...new Set(sources.flatMap(({ criteria }) => criteria))].map((id) => {
      const criterion = edition.criteria.get(id)
      return { id, name: criterion === undefined ? id : setName(criterion) }
    }),
    marks: everyMark().filter((mark) => used.has(mark)),
  }
}

export interface RegisterYear {
  readonly source: string
  readonly year: string
}

/** Every source and year that has a page. */
export function registerYears(edition: Edition): RegisterYear[] {
  return [...edition.sources.keys()].flatMap((source) =>
    yearsOf(edition.lotsOf(source).map(({ sampled }) => sampled)).map((year) => ({ source, year })),
  )
}

export interface RegisterYearView {
  readonly name: string
  /** Newest first. */
  readonly lots: readonly LotLine[]
}

export function registerYearView(edition: Edition, { source, year }: RegisterYear): RegisterYearView {
  return {
    name: edition.sources.get(source)?.name ?? source,
    lots: lotLines(edition, sampledIn(edition.lotsOf(source), year)),
  }
}
