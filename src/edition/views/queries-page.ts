/** The page of the tables for query engines: how to reach them, ready queries, and every column. */
import type { Edition } from '../shape/edition.ts'
import { link, paths } from '../shape/addresses.ts'
import { partitions, TABLES } from '../tables/partitions.ts'
import { queriesOf } from '../tables/queries.ts'
import type { ColumnHead, TableHead } from '../tables/table.ts'
import { tableSources } from '../tables/table-sources.ts'
import { plural } from '../../words/numbers.ts'

/** SQL with its file. */
export interface SqlView {
  readonly id: string
  readonly title: string
  readonly note: string
  readonly sql: string
  readonly href: string
  /** Name of its file. */
  readonly file: string
}

export interface TableView {
  readonly name: string
  readonly title: string
  readonly description: string
  /** "36 files, by source and year". */
  readonly files: string
  readonly columns: readonly {
    readonly name: string
    readonly type: string
    readonly description: string
  }[]
}

export interface QueriesPage {
  readonly sources: readonly SqlView[]
  readonly queries: readonly SqlView[]
  readonly tables: readonly TableView[]
  readonly description: { readonly href: string; readonly file: string }
}

/** @param edition already the audience's */
export function queriesPage(edition: Edition): QueriesPage {
  const files = Map.groupBy(partitions(edition), ({ table }) => table)
  const sql = ({ id, title, note, sql: text }: Omit<SqlView, 'href' | 'file'>): SqlView => ({
    id,
    title,
    note,
    sql: text,
    href: link(edition, paths.query(id)),
    file: `${id}.sql`,
  })
  return {
    sources: tableSources(edition).map(sql),
    queries: queriesOf(edition).map(sql),
    tables: TABLES.flatMap((table) => {
      const count = files.get(table)?.length ?? 0
      return count === 0 ? [] : [tableView(table, count)]
    }),
    description: { href: link(edition, paths.dataPackage), file: 'datapackage.json' },
  }
}

function tableView({ name, title, description, keys, columns }: TableHead, count: number): TableView {
  return {
    name,
    title,
    description,
    files: `${plural(count, 'file', 'files')}, by ${keys.join(' and ')}`,
    columns: columns.map((column) => ({
      name: column.name,
      type: typeWords(column),
      description: column.description,
    })),
  }
}

/** "double, t"; "double, in unit" where each row names its own. */
function typeWords({ type, unit, unitColumn }: ColumnHead): string {
  if (unit !== undefined) return `${type}, ${unit}`
  return unitColumn === undefined ? type : `${type}, in ${unitColumn}`
}
