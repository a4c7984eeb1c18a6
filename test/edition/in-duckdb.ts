/** Reads tables back with DuckDB, which shares no code with what wrote them. */
import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { type DuckDBConnection, DuckDBInstance, type Json } from '@duckdb/node-api'
import type { Edition } from '../../src/edition/shape/edition.ts'
import { dataFiles } from '../../src/edition/writers/outputs.ts'

export type Row = Readonly<Record<string, Json>>

/** Answers of one statement, whole numbers of 64 bits and more as numbers. */
export async function rowsOf(connection: DuckDBConnection, sql: string): Promise<Row[]> {
  const reader = await connection.runAndReadAll(sql)
  const whole = new Set(
    reader.columnNames().filter((_, place) => /^(BIGINT|HUGEINT)$/.test(String(reader.columnType(place)))),
  )
  return reader
    .getRowObjectsJson()
    .map((row) =>
      Object.fromEntries(
        Object.entries(row).map(([name, value]) => [
          name,
          whole.has(name) && value !== null ? Number(value) : value,
        ]),
      ),
    )
}

export async function connected(): Promise<DuckDBConnection> {
  return (await DuckDBInstance.create(':memory:')).connect()
}

/**
 * Gives `use` a folder with the tables of an edition, their description and the SQL, and removes it afterwards.
 * @param edition already the audience's
 */
export async function withTables<T>(edition: Edition, use: (folder: string) => Promise<T>): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), 'tables-'))
  try {
    for (const { path, pieces } of dataFiles(edition)) {
      if (!/^data\/(tables\/|queries\/|datapackage\.json$|[a-z]+\.csv$)/.test(path)) continue
      mkdirSync(join(folder, dirname(path)), { recursive: true })
      for (const piece of pieces() ?? []) writeFileSync(join(folder, path), piece, { flag: 'a' })
    }
    return await use(folder)
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

/** Statements that name files below the folder of a site, as they are run from elsewhere. */
export function from(folder: string, sql: string): string {
  return sql.replaceAll("'data/tables/", `'${folder}/data/tables/`)
}

/** Rows and metadata of every Parquet file below a folder as JSON, by the file's path in it. */
export async function parquetTexts(folder: string): Promise<Map<string, string>> {
  const connection = await connected()
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((path) =>
    path.endsWith('.parquet'),
  )
  const texts = new Map<string, string>()
  for (const path of files) {
    const file = join(folder, path).replaceAll("'", "''")
    const rows = await rowsOf(connection, `SELECT * FROM read_parquet('${file}', hive_partitioning = false)`)
    const facts = await rowsOf(
      connection,
      `SELECT decode(key) AS key, decode(value) AS value FROM parquet_kv_metadata('${file}')`,
    )
    texts.set(path, JSON.stringify([rows, facts]))
  }
  connection.closeSync()
  return texts
}
