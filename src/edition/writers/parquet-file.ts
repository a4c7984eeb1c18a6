/**
 * One table as an Apache Parquet file (parquet.apache.org, format 2, compressed with Snappy): the same columns give the
 * same bytes.
 */
import { parquetWriteBuffer } from 'hyparquet-writer'
import type { ColumnHead, ColumnType, FilledColumn } from '../tables/table.ts'

type SchemaElement = NonNullable<Parameters<typeof parquetWriteBuffer>[0]['schema']>[number]

/** A date is days since 1970-01-01. Source: parquet-format, LogicalTypes.md. */
const TYPES: Readonly<Record<ColumnType, Pick<SchemaElement, 'type' | 'converted_type'>>> = {
  text: { type: 'BYTE_ARRAY', converted_type: 'UTF8' },
  integer: { type: 'INT32' },
  double: { type: 'DOUBLE' },
  boolean: { type: 'BOOLEAN' },
  date: { type: 'INT32', converted_type: 'DATE' },
}

/**
 * "NAME version NUMBER" is the form that readers look for, which else mistrust the least and greatest values of a text.
 * The number is that of these files and not of the program, so that a new program leaves the bytes as they are.
 */
const WRITTEN_BY = 'puteoli version 1'

/** One row group and page a column: no file comes near as many rows. */
const ROWS = 1_000_000

/**
 * @param columns all with as many values
 * @param facts what the file says of itself, by key; `units` is added to them
 */
export function parquetFile(
  columns: readonly FilledColumn[],
  facts: Readonly<Record<string, string>>,
): Uint8Array {
  const metadata = { ...facts, units: JSON.stringify(unitsOf(columns)) }
  return new Uint8Array(
    parquetWriteBuffer({
      columnData: columns.map(({ name, values }) => ({ name, data: [...values] })),
      schema: [{ name: 'schema', num_children: columns.length }, ...columns.map(element)],
      rowGroupSize: ROWS,
      createdBy: WRITTEN_BY,
      kvMetadata: Object.entries(metadata).map(([key, value]) => ({ key, value })),
    }),
  )
}

function element({ name, type, required }: ColumnHead): SchemaElement {
  return { name, ...TYPES[type], repetition_type: required === true ? 'REQUIRED' : 'OPTIONAL' }
}

/**
 * Units by column; of a column whose rows name their own, the column that does. The schema of a Parquet file has no room
 * for a unit.
 */
function unitsOf(columns: readonly ColumnHead[]): Record<string, string | { readonly column: string }> {
  return Object.fromEntries(
    columns.flatMap(({ name, unit, unitColumn }) => {
      const said = unit ?? (unitColumn === undefined ? undefined : { column: unitColumn })
      return said === undefined ? [] : [[name, said]]
    }),
  )
}
