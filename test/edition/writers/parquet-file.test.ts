import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import type { FilledColumn } from '../../../src/edition/tables/table.ts'
import { parquetFile } from '../../../src/edition/writers/parquet-file.ts'
import { connected, type Row, rowsOf } from '../in-duckdb.ts'

const COLUMNS: readonly FilledColumn[] = [
  { name: 'lot', type: 'text', required: true, description: 'Lot', values: ['a/1', 'a/2', 'a/3'] },
  { name: 'words', type: 'text', description: 'Words', values: ['50 °C, ± 2 "Ω"\nnext', null, ''] },
  { name: 'n', type: 'integer', description: 'Number', values: [0, null, -2_147_483_648] },
  { name: 'mass_t', type: 'double', unit: 't', description: 'Mass', values: [0.1, null, 1e300] },
  { name: 'value', type: 'double', unitColumn: 'words', description: 'Value', values: [-0.5, 2 / 3, null] },
  { name: 'valid', type: 'boolean', description: 'Valid', values: [true, false, null] },
  { name: 'day', type: 'date', description: 'Day', values: [0, null, 20_522] },
]

async function readBack(bytes: Uint8Array, sql: (file: string) => string): Promise<Row[]> {
  const folder = mkdtempSync(join(tmpdir(), 'parquet-'))
  const connection = await connected()
  try {
    const file = join(folder, 'part.parquet')
    writeFileSync(file, bytes)
    return await rowsOf(connection, sql(`'${file}'`))
  } finally {
    connection.closeSync()
    rmSync(folder, { recursive: true })
  }
}

describe('parquetFile', () => {
  it('gives an engine every value back, and null for none', async () => {
    const rows = await readBack(parquetFile(COLUMNS, {}), (file) => `SELECT * FROM ${file}`)
    // 20,522 days after 1970-01-01 are 2026-03-10: 56 years with 14 leap days are 20,454 days, and 68 more.
    expect(rows).toEqual([
      {
        lot: 'a/1',
        words: '50 °C, ± 2 "Ω"\nnext',
        n: 0,
        mass_t: 0.1,
        value: -0.5,
        valid: true,
        day: '1970-01-01',
      },
      { lot: 'a/2', words: null, n: null, mass_t: null, value: 2 / 3, valid: false, day: null },
      {
        lot: 'a/3',
        words: '',
        n: -2_147_483_648,
        mass_t: 1e300,
        value: null,
        valid: null,
        day: '2026-03-10',
      },
    ])
  })

  it('gives the columns their types, also where there is no row', async () => {
    const empty = COLUMNS.map((column) => ({ ...column, values: [] }))
    for (const columns of [COLUMNS, empty])
      expect(
        await readBack(
          parquetFile(columns, {}),
          (file) => `SELECT column_name, column_type FROM (DESCRIBE SELECT * FROM ${file})`,
        ),
      ).toEqual(
        [
          ['lot', 'VARCHAR'],
          ['words', 'VARCHAR'],
          ['n', 'INTEGER'],
          ['mass_t', 'DOUBLE'],
          ['value', 'DOUBLE'],
          ['valid', 'BOOLEAN'],
          ['day', 'DATE'],
        ].map(([column_name = '', column_type = '']) => ({ column_name, column_type })),
      )
    expect(await readBack(parquetFile(empty, {}), (file) => `SELECT * FROM ${file}`)).toEqual([])
  })

  it('says of itself what it is told, and the unit of each column or the column that names it', async () => {
    const facts = await readBack(
      parquetFile(COLUMNS, { table: 'lots' }),
      (file) => `SELECT decode(key) AS key, decode(value) AS value FROM parquet_kv_metadata(${file})`,
    )
    expect(facts).toEqual([
      { key: 'table', value: 'lots' },
      { key: 'units', value: '{"mass_t":"t","value":{"column":"words"}}' },
    ])
  })

  it('gives the same bytes for the same columns', () => {
    expect(parquetFile(COLUMNS, { a: 'b' })).toEqual(parquetFile(structuredClone(COLUMNS), { a: 'b' }))
  })

  it('keeps thousands of rows in one group, in their order', async () => {
    const values = Array.from({ length: 20_000 }, (_, place) => (place * 7919) % 20_000)
    const rows = await readBack(
      parquetFile([{ name: 'n', type: 'integer', required: true, description: 'Number', values }], {}),
      (file) => `SELECT n, file_row_number FROM read_parquet(${file}, file_row_number = true) ORDER BY 2`,
    )
    expect(rows.map(({ n }) => n)).toEqual(values)
  })
})
