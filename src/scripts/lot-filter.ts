/** Filters and sorts the register's columns: pure, so that it is tested without a page. */
import { liesWithin, type Period } from './period.ts'
import type { Moment } from '../core/measure/moment.ts'
import type { StandingMark } from '../words/standing.ts'
import { governingStandingAt, type ListedLot, type LotColumns, lotAt, standingAt } from './columns.ts'

/** Empty text means any. */
export interface Filter {
  readonly source: string
  /** Empty text means the one that governs each lot. */
  readonly criterion: string
  /** Mark of a state and outcome. */
  readonly outcome: string
  /** Days of sampling. */
  readonly sampled: Period
  /** Text that the lot's id or printed number holds. */
  readonly text: string
}

export interface LotRow extends ListedLot {
  /** Its mark under the chosen criterion. */
  readonly mark: StandingMark | null
  /** State and outcome under the chosen criterion. */
  readonly standing: string
  readonly class: string
  readonly source: string
  /** Which clause is not met and by how much, under the set that governs; null under another one. */
  readonly shortfall: string | null
}

/** How the table is sorted: by which of its columns, and which way. */
export interface Sort {
  readonly column: number
  readonly descending: boolean
}

/** "sampled-down": as an address carries it. */
export function sortText({ column, descending }: Sort): string {
  return `${TABLE_COLUMNS[column] ?? 'sampled'}-${descending ? 'down' : 'up'}`
}

/** Null for a text that names no column of the table. */
export function sortIn(text: string): Sort | null {
  const [, name = '', way] = /^([a-z]+)-(up|down)$/.exec(text) ?? []
  const column = TABLE_COLUMNS.findIndex((known) => known === name)
  return column < 0 ? null : { column, descending: way === 'down' }
}

/** Members of a row in the order in which the table shows them. */
const TABLE_COLUMNS = ['number', 'sampled', 'standing', 'class', 'source'] as const

export function lotRow(data: LotColumns, criterion: string, index: number): LotRow {
  const { columns, sources } = data
  const { mark, text } =
    criterion === '' ? governingStandingAt(data, index) : standingAt(data, criterion, index)
  return {
    ...lotAt(data, index),
    mark,
    standing: text,
    class: columns.class[index] ?? 'none',
    source: sources[columns.source[index] ?? -1] ?? '',
    shortfall: criterion === '' ? (columns.governingShortfall[index] ?? null) : null,
  }
}

/** @returns indices of the lots that fit */
export function filteredLots(data: LotColumns, filter: Filter): number[] {
  const text = filter.text.trim().toLowerCase()
  return data.columns.lot.flatMap((_, index) => {
    const row = lotRow(data, filter.criterion, index)
    const fits =
      (filter.source === '' || row.source === filter.source) &&
      (filter.outcome === '' || row.mark === filter.outcome) &&
      liesWithin(row.sampled, filter.sampled) &&
      (text === '' || `${row.id} ${row.number}`.toLowerCase().includes(text))
    return fits ? [index] : []
  })
}

/** By one column, then in the order of the file. */
export function sortedLots(
  lots: readonly number[],
  data: LotColumns,
  criterion: string,
  sort: Sort,
): number[] {
  const name = TABLE_COLUMNS[sort.column] ?? 'sampled'
  const keys = new Map(lots.map((index) => [index, keyOf(lotRow(data, criterion, index)[name])]))
  const sign = sort.descending ? -1 : 1
  return [...lots].sort((a, b) => sign * compare(keys.get(a) ?? '', keys.get(b) ?? '') || a - b)
}

function keyOf(cell: string | Moment | null): string | number {
  return cell === null ? '' : typeof cell === 'string' ? cell : cell.day
}

/** Two keys of one column: both texts, or both days. */
function compare(a: string | number, b: string | number): number {
  return a < b ? -1 : a > b ? 1 : 0
}
