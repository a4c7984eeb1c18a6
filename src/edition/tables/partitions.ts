/**
 * The files of the tables: each holds the rows of one source, or laboratory, and year, so that a new lot touches the
 * files of its own source and year alone. Folders are named in the manner of Apache Hive, which engines read as columns.
 */
import { yearOf } from '../../core/measure/moment.ts'
import { digestOf } from '../../records/issued/digest.ts'
import type { Edition, ListedLot } from '../shape/edition.ts'
import { paths } from '../shape/addresses.ts'
import { partOfSource } from '../shape/part-of-source.ts'
import { onceTraced, withoutTrace } from '../shape/trace.ts'
import { CLAUSES } from './clauses-table.ts'
import { CONTROLS, controlColumns } from './controls-table.ts'
import { FINDINGS, findingColumns } from './findings-table.ts'
import { LOTS } from './lots-table.ts'
import { RESULTS } from './results-table.ts'
import type { LotTable } from './rows-of-lots.ts'
import { SHIPMENTS, shipmentColumns } from './shipments-table.ts'
import type { FilledColumn, TableHead } from './table.ts'
import { VERDICTS } from './verdicts-table.ts'

/** All tables, in the order in which they are described. */
export const TABLES: readonly TableHead[] = [LOTS, VERDICTS, CLAUSES, RESULTS, SHIPMENTS, FINDINGS, CONTROLS]

/** Values of the two keys of a table; null where the rows have none. */
type KeyValues = readonly [string | null, string | null]

export interface Partition {
  readonly table: TableHead
  readonly values: KeyValues
  /** Of its file. */
  readonly path: string
  /** The one source that its rows are of; absent where they are of several. */
  readonly source?: string
  /** What its rows are made of, as text: ids of records, or what was read already. */
  readonly given: string
  /** Columns with their rows, made when asked for, of what is given and of the edition. */
  readonly columns: () => readonly FilledColumn[]
}

/**
 * Every file of the tables, in an order that only records give; none for a table without rows.
 * @param edition already the audience's
 */
export function* partitions(edition: Edition): Generator<Partition> {
  yield* ofLots(edition)
  yield* ofShipments(edition)
  yield* ofSourcesAndLaboratories(edition)
  yield* ofControls(edition)
}

function partition(
  table: TableHead,
  values: KeyValues,
  { of, ...made }: Pick<Partition, 'source' | 'columns'> & { readonly of: unknown },
): Partition {
  const path = paths.tablePart(table.name, table.keys, values)
  return { table, values, path, given: JSON.stringify(of), ...made }
}

/** The lots of a source and year are read once for all their tables, and let go with them. */
function* ofLots(edition: Edition): Generator<Partition> {
  for (const source of edition.sources.keys())
    for (const [year, rows] of Map.groupBy(edition.lotsOf(source), ({ sampled }) => yearOf(sampled))) {
      const ids = rows.map(({ id }) => id)
      const lots = onceTraced(`lots of ${source} in ${year}`, () => ids.map((id) => edition.lot(id)))
      for (const table of tablesOf(rows))
        yield partition(table, [source, year], {
          source,
          of: ids,
          columns: () => table.fill(edition, lots()),
        })
    }
}

function tablesOf(lots: readonly ListedLot[]): LotTable[] {
  const judged = lots.some(({ outcomes }) => outcomes.length > 0)
  const questioned = lots.some(({ findingCount }) => findingCount > 0)
  return [LOTS, RESULTS, ...(judged ? [VERDICTS, CLAUSES] : []), ...(questioned ? [FINDINGS] : [])]
}

function* ofShipments(edition: Edition): Generator<Partition> {
  for (const source of edition.sources.keys())
    for (const [year, digest] of shipmentsDigests(edition, source))
      yield partition(SHIPMENTS, [source, year], {
        source,
        of: digest,
        columns: () => {
          const all = withoutTrace(() => edition.shipmentsOf(source))
          return shipmentColumns(
            edition,
            all.filter(({ date }) => yearOf(date) === year),
          )
        },
      })
}

/** Of the shipments of each year: only those of a changed year are read. */
const shipmentsDigests = partOfSource(
  'digests of shipments by year',
  (edition: Edition, source): readonly (readonly [year: string, digest: string])[] =>
    inOrder(Map.groupBy(edition.shipmentsOf(source), ({ date }) => yearOf(date))).map(([year, shipments]) => [
      year,
      digestOf(JSON.stringify(shipments)),
    ]),
)

function* ofSourcesAndLaboratories(edition: Edition): Generator<Partition> {
  for (const { id, findingCount } of edition.sources.values())
    if (findingCount > 0)
      yield partition(FINDINGS, [id, null], {
        source: id,
        of: id,
        columns: () => findingColumns(edition, edition.source(id).findings, 'source'),
      })
  const laboratories = [...edition.laboratories.keys()]
  const found = () => laboratories.flatMap((id) => edition.laboratoryFindings(id))
  if (found().length > 0)
    yield partition(FINDINGS, [null, null], {
      of: laboratories,
      columns: () => findingColumns(edition, found(), 'laboratory'),
    })
}

function* ofControls(edition: Edition): Generator<Partition> {
  const groups = Map.groupBy(
    edition.controls.values(),
    ({ record }) => `${record.laboratory}/${yearOf(record.cast)}`,
  )
  for (const [group, controls] of inOrder(groups)) {
    const [laboratory = '', year = ''] = group.split('/')
    const ids = controls.map(({ id }) => id)
    const own = () => ids.flatMap((id) => edition.controls.get(id) ?? [])
    yield partition(CONTROLS, [laboratory, year], { of: ids, columns: () => controlColumns(edition, own()) })
  }
}

/** By code unit, so that the first shipment or control on record does not decide. */
function inOrder<T>(groups: ReadonlyMap<string, T>): (readonly [string, T])[] {
  return [...groups].sort(([a], [b]) => (a < b ? -1 : 1))
}
