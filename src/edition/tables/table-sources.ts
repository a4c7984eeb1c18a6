/** How an engine is told where the tables lie: all that differs between engines. */
import type { Edition } from '../shape/edition.ts'
import { fullAddress, paths } from '../shape/addresses.ts'
import { TABLES } from './partitions.ts'
import { tableNames } from './queries.ts'
import type { ColumnType, TableHead } from './table.ts'

export interface TableSource {
  /** Of its file, by the engine. */
  readonly id: string
  readonly title: string
  /** What has to be filled in, in whole sentences. */
  readonly note: string
  readonly sql: string
}

/** Types of the keys: an id that is all digits stays text. */
const KEYS = { source: 'VARCHAR', laboratory: 'VARCHAR', year: 'INTEGER' }

const TRINO: Readonly<Record<ColumnType, string>> = {
  text: 'varchar',
  integer: 'integer',
  double: 'double',
  boolean: 'boolean',
  date: 'date',
}

/** Stands for the user's own. */
const BUCKET = 's3://BUCKET'

/** A statement for each table that has files, for each engine. */
export function tableSources(edition: Edition): TableSource[] {
  const names = tableNames(edition)
  const tables = TABLES.filter(({ name }) => names.has(name))
  const home = fullAddress(edition, paths.front)
  return [
    {
      id: 'duckdb',
      title: 'DuckDB, from a copy of the site',
      note: 'Run it in the folder that holds data/. Object storage works the same: put its address before data/tables/.',
      sql: tables.map((table) => duckdbView(table)).join(''),
    },
    ...(home === null
      ? []
      : [
          {
            id: 'duckdb-over-http',
            title: 'DuckDB, over the web',
            note: 'A web server lists no folder, so the names of the files are read from the description of the tables.',
            sql: `SET VARIABLE site = '${home.replaceAll("'", "''")}';\n${tables.map(duckdbOverHttp).join('')}`,
          },
        ]),
    {
      id: 'spark',
      title: 'Spark, from object storage',
      note: 'Copy data/tables/ to a bucket and put its name for BUCKET.',
      sql: tables.map(sparkView).join(''),
    },
    {
      id: 'trino',
      title: 'Trino, from object storage',
      note: 'Copy data/tables/ to a bucket, put its name for BUCKET, and use a catalogue of the Hive connector; repeat the calls when a year or a source has come.',
      sql: `CREATE SCHEMA IF NOT EXISTS register;\nUSE register;\n${tables.map(trinoTable).join('')}`,
    },
  ]
}

function hiveTypes({ keys }: TableHead): string {
  return `{${keys.map((key) => `'${key}': ${KEYS[key]}`).join(', ')}}`
}

function duckdbView(table: TableHead): string {
  return `CREATE OR REPLACE VIEW ${table.name} AS
SELECT * FROM read_parquet(
  '${paths.tables}${table.name}/*/*/*.parquet',
  hive_partitioning = true,
  hive_types = ${hiveTypes(table)}
);
`
}

function duckdbOverHttp(table: TableHead): string {
  return `SET VARIABLE files = (
  SELECT list_transform(resource.path::VARCHAR[], file -> getvariable('site') || 'data/' || file)
  FROM (
    SELECT unnest(from_json(resources, '["JSON"]')) AS json
    FROM read_json(getvariable('site') || '${paths.dataPackage}', columns = {resources: 'JSON'})
  ), LATERAL (SELECT json ->> 'name' AS name, json -> 'path' AS path) AS resource
  WHERE resource.name = '${table.name}'
);
CREATE OR REPLACE TABLE ${table.name} AS
SELECT * FROM read_parquet(
  getvariable('files'),
  hive_partitioning = true,
  hive_types = ${hiveTypes(table)}
);
`
}

function sparkView({ name, columns, keys }: TableHead): string {
  const fields = [...columns.map((column) => [column.name, SPARK[column.type]]), ...keys.map(sparkKey)]
  return `CREATE OR REPLACE TEMPORARY VIEW ${name} (
${fields.map(([field, type]) => `  ${field} ${type}`).join(',\n')}
)
USING parquet
OPTIONS (path '${BUCKET.replace('s3:', 's3a:')}/${paths.tables}${name}');
`
}

function sparkKey(key: TableHead['keys'][number]): [string, string] {
  return [key, key === 'year' ? 'INT' : 'STRING']
}

const SPARK: Readonly<Record<ColumnType, string>> = {
  text: 'STRING',
  integer: 'INT',
  double: 'DOUBLE',
  boolean: 'BOOLEAN',
  date: 'DATE',
}

function trinoTable({ name, columns, keys }: TableHead): string {
  const fields = [
    ...columns.map((column) => `${column.name} ${TRINO[column.type]}`),
    ...keys.map((key) => `${key} ${KEYS[key].toLowerCase()}`),
  ]
  return `CREATE TABLE IF NOT EXISTS ${name} (
${fields.map((field) => `  ${field}`).join(',\n')}
)
WITH (
  format = 'PARQUET',
  external_location = '${BUCKET}/${paths.tables}${name}/',
  partitioned_by = ARRAY[${keys.map((key) => `'${key}'`).join(', ')}]
);
CALL system.sync_partition_metadata('register', '${name}', 'ADD');
`
}
