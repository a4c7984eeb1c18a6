/**
 * data/datapackage.json: every table of the site with its files, columns, types and units (Data Package 2.0,
 * datapackage.org).
 */
import { defined } from '../../core/measure/defined.ts'
import type { Edition } from '../shape/edition.ts'
import { fullAddress, paths } from '../shape/addresses.ts'
import { partitions, TABLES } from '../tables/partitions.ts'
import type { ColumnHead, ColumnType, PartitionKeys, TableHead } from '../tables/table.ts'
import { LOT_COLUMNS, NUMBER_COLUMNS, RESULT_COLUMNS, SHIPMENT_COLUMNS } from './tables.ts'

const PROFILE = 'https://datapackage.org/profiles/2.0/datapackage.json'

/** Types of Table Schema. */
const TYPES: Readonly<Record<ColumnType, string>> = {
  text: 'string',
  integer: 'integer',
  double: 'number',
  boolean: 'boolean',
  date: 'date',
}

/** The tables for spreadsheets. */
const SPREADSHEETS = [
  { path: paths.lotsTable, name: 'lots-csv', title: 'Lots, for a spreadsheet', columns: LOT_COLUMNS },
  {
    path: paths.resultsTable,
    name: 'results-csv',
    title: 'Results, for a spreadsheet',
    columns: RESULT_COLUMNS,
  },
  {
    path: paths.shipmentsTable,
    name: 'shipments-csv',
    title: 'Shipments, for a spreadsheet',
    columns: SHIPMENT_COLUMNS,
  },
]

/** @param edition already the audience's */
export function dataPackage(edition: Edition): object {
  const files = Map.groupBy(partitions(edition), ({ table }) => table)
  const home = fullAddress(edition, paths.front)
  return {
    $schema: PROFILE,
    name: 'tables',
    title: edition.site.title,
    ...(edition.site.notice === undefined ? {} : { description: edition.site.notice }),
    ...(home === null ? {} : { homepage: home }),
    asOf: edition.asOf.text,
    resources: [
      ...TABLES.flatMap((table) => {
        const own = files.get(table) ?? []
        return own.length === 0
          ? []
          : [
              tableResource(
                table,
                own.map(({ path }) => path),
              ),
            ]
      }),
      ...SPREADSHEETS.map(spreadsheetResource),
    ],
  }
}

function tableResource(table: TableHead, files: readonly string[]): object {
  return {
    name: table.name,
    title: table.title,
    description: table.description,
    type: 'table',
    path: files.map(fromHere),
    format: 'parquet',
    mediatype: 'application/vnd.apache.parquet',
    // Own member: the values stand in the folders' names and in no column of the files.
    partitionedBy: partitionFields(table.keys),
    schema: { fields: table.columns.map(field) },
  }
}

function partitionFields([who, year]: PartitionKeys): object[] {
  return [
    { name: who, type: 'string', description: `The ${who} by id` },
    { name: year, type: 'integer', description: 'Calendar year' },
  ]
}

function field({ name, type, unit, unitColumn, description, required }: ColumnHead): object {
  return {
    name,
    type: TYPES[type],
    description,
    ...defined({ unit, unitColumn }),
    ...(required === true ? { constraints: { required } } : {}),
  }
}

function spreadsheetResource({ path, name, title, columns }: (typeof SPREADSHEETS)[number]): object {
  return {
    name,
    title,
    type: 'table',
    path: fromHere(path),
    format: 'csv',
    mediatype: 'text/csv',
    encoding: 'utf-8',
    schema: {
      fields: columns.map((column) => ({
        name: column,
        type: NUMBER_COLUMNS.has(column) ? 'number' : 'string',
      })),
    },
  }
}

/** A path from the folder of the description. */
function fromHere(path: string): string {
  return path.slice('data/'.length)
}
