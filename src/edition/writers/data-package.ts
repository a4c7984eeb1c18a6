/**
 * data/datapackage.json: every table of the site with its files, columns, types and units (Data Package 2.0,
 * datapackage.org).
 */
import { defined } from '../../core/measure/defined.ts'
import type { Edition } from '../shape/edition.ts'
import { TEXT_GUARD } from '../../words/csv-texts.ts'
import { fullAddress, paths } from '../shape/addresses.ts'
import { partitions, TABLES } from '../tables/partitions.ts'
import type { ColumnHead, ColumnType, PartitionKeys, TableHead } from '../tables/table.ts'
import { LOTS_SHEET, RESULTS_SHEET, SHIPMENTS_SHEET, type Spreadsheet } from './spreadsheet-columns.ts'

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
  { path: paths.lotsTable, ...LOTS_SHEET },
  { path: paths.resultsTable, ...RESULTS_SHEET },
  { path: paths.shipmentsTable, ...SHIPMENTS_SHEET },
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

function spreadsheetResource({
  path,
  name,
  title,
  description,
  columns,
}: Spreadsheet & { readonly path: string }): object {
  return {
    name,
    title,
    description: `${description} ${TEXT_GUARD}`,
    type: 'table',
    path: fromHere(path),
    format: 'csv',
    mediatype: 'text/csv',
    encoding: 'utf-8',
    schema: { fields: columns.map((column) => ({ ...field(column), ...booleanCells(column) })) },
  }
}

/** How a spreadsheet's table writes what is true and what is not. */
function booleanCells({ type }: ColumnHead): object {
  return type === 'boolean' ? { trueValues: ['yes'], falseValues: ['no'] } : {}
}

/** A path from the folder of the description. */
function fromHere(path: string): string {
  return path.slice('data/'.length)
}
