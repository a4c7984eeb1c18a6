/** What a table for query engines is made of: described columns, and the rows that fill them. */
import type { Moment } from '../../core/measure/moment.ts'
import type { Bounds } from '../../core/result/bounds.ts'
import { plainSpaces } from '../../words/sentences.ts'

/** `double` is a 64-bit float, `integer` a 32-bit one, `date` a calendar date without a time. */
export type ColumnType = 'text' | 'integer' | 'double' | 'boolean' | 'date'

export interface ColumnHead {
  /** Lower case with underscores, and reserved in none of the engines. */
  readonly name: string
  readonly type: ColumnType
  /** A sentence without a full stop. */
  readonly description: string
  /** Of every value of the column. */
  readonly unit?: string
  /** Column in which each row names the unit of its own value. */
  readonly unitColumn?: string
  /** Whether every row has a value. */
  readonly required?: true
}

export type Cell = string | number | boolean | null

export interface FilledColumn extends ColumnHead {
  /** A date is days since 1970-01-01. */
  readonly values: readonly Cell[]
}

/** A column with the way from a row to its value. */
export interface Column<Row> extends ColumnHead {
  readonly of: (row: Row) => string | number | boolean | Moment | null | undefined
}

/** Columns for what a value may be, in the unit of its own. @param boundsOf undefined for a value that is known itself */
export function boundColumns<Row>(
  boundsOf: (row: Row) => Pick<Bounds, 'low' | 'high'> | undefined,
): Column<Row>[] {
  const bound = { type: 'double', unitColumn: 'unit' } as const
  const within = 'that the value may be, where it is known only within bounds'
  return [
    { name: 'value_low', ...bound, description: `Least ${within}`, of: (row) => boundsOf(row)?.low },
    { name: 'value_high', ...bound, description: `Most ${within}`, of: (row) => boundsOf(row)?.high },
  ]
}

/** Names of the two keys that the folders of a table are named by. */
export type PartitionKeys = readonly ['source' | 'laboratory', 'year']

export interface TableHead {
  readonly name: string
  readonly title: string
  /** What a row is, and what its year is of. */
  readonly description: string
  readonly keys: PartitionKeys
  readonly columns: readonly ColumnHead[]
}

/** Columns filled with the rows, in their order. */
export function filled<Row>(columns: readonly Column<Row>[], rows: readonly Row[]): FilledColumn[] {
  return columns.map(({ of, ...head }) => ({ ...head, values: rows.map((row) => cell(of(row))) }))
}

/** Columns without the way to their values. */
export function headsOf<Row>(columns: readonly Column<Row>[]): ColumnHead[] {
  return columns.map(({ of: _, ...head }) => head)
}

/** What is no number, such as the open end of an interval, is absent, as in JSON. */
function cell(value: ReturnType<Column<never>['of']>): Cell {
  if (value === null || value === undefined) return null
  if (typeof value === 'number') return Number.isFinite(value) ? value : null
  if (typeof value === 'object') return value.day
  return typeof value === 'string' ? plainSpaces(value) : value
}
