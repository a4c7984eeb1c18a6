/** The newest lots of a source with the values of the governing clauses, the smallest margin and the revision. */
import { mass } from '../../words/source-strip.ts'
import { shortDate } from '../../words/dates.ts'
import type { LotStanding } from '../../words/standing.ts'
import type { Edition } from '../shape/edition.ts'
import type { JudgedValue, SourceLot } from './source-lots.ts'

export interface LotTableView {
  /** A clause each, in the order of the set, as far as any of the lots is held to it. */
  readonly columns: readonly { readonly clause: string; readonly title: string; readonly limit: string }[]
  /** Newest first. */
  readonly rows: readonly LotTableRow[]
}

export interface LotTableRow {
  readonly id: string
  readonly number: string
  readonly sampled: string
  readonly mass: string
  readonly class: string
  readonly standing: LotStanding
  /** In the order of the columns; missed where the lot fails by it. */
  readonly cells: readonly { readonly text: string; readonly missed: boolean }[]
  /** The smallest margin of a clause that is not met, else of all. */
  readonly margin: string
  readonly revision: string
}

/** Clauses that a table has room for. */
const COLUMNS = 9

/** @param lots in order of sampling */
export function lotTable({ site }: Pick<Edition, 'site'>, lots: readonly SourceLot[]): LotTableView {
  const clauses = new Map<string, JudgedValue>()
  for (const { judged } of lots) for (const value of judged) clauses.set(value.clause, value)
  const columns = [...clauses.values()].slice(0, COLUMNS)
  return {
    columns: columns.map(({ clause, title, limit }) => ({ clause, title, limit })),
    rows: [...lots].reverse().map((lot) => lotRow(lot, columns, site.units)),
  }
}

function lotRow(
  { row, judged, standing }: SourceLot,
  columns: readonly JudgedValue[],
  units: Edition['site']['units'],
): LotTableRow {
  const own = new Map(judged.map((value) => [value.clause, value]))
  return {
    id: row.id,
    number: row.number,
    sampled: shortDate(row.sampled),
    mass: mass(row.tonnes, units),
    class: row.class ?? 'none',
    standing,
    cells: columns.map(({ clause }) => ({
      text: own.get(clause)?.value ?? '',
      missed: own.get(clause)?.decides === true && own.get(clause)?.outcome === 'does-not-meet',
    })),
    margin: smallestMargin(judged, standing.mark !== 'meets'),
    revision: row.issued === null ? 'none' : String(row.issued.number),
  }
}

/**
 * Margins of unlike units are not compared: that of a clause missed goes first, else the one nearest its limit in
 * shares. Of results of which one would do, the better one counts, and none is missed where one of them meets.
 */
function smallestMargin(judged: readonly JudgedValue[], isOpen: boolean): string {
  const metRoutes = new Set(judged.flatMap(({ route, outcome }) => (outcome === 'meets' ? [route] : [])))
  const missed = judged.filter(
    ({ decides, outcome, route }) =>
      (decides || isOpen) && outcome === 'does-not-meet' && (route === null || !metRoutes.has(route)),
  )
  const [first] = bestOfRoutes(missed)
  if (first !== undefined) return `−${first.by}`
  const met = judged
    .filter(({ outcome, kind }) => outcome === 'meets' && kind === 'value')
    .map((value) => ({ value, share: value.margin / Math.max(Math.abs(value.number), 1e-9) }))
    .sort((a, b) => a.share - b.share)
  return met[0]?.value.by ?? ''
}

/** Of values of which one would do, the nearest to its limit. */
export function bestOfRoutes(values: readonly JudgedValue[]): JudgedValue[] {
  return [...Map.groupBy(values, ({ route, clause }) => route ?? clause).values()].map((own) =>
    own.reduce((a, b) => (a.margin < b.margin ? b : a)),
  )
}
