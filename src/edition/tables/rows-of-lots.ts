/** Tables with rows of a lot: what they share. */
import type { Verdict } from '../../core/criteria/verdict.ts'
import type { Edition, LotEntry } from '../shape/edition.ts'
import { type Column, type FilledColumn, filled, headsOf, type TableHead } from './table.ts'

/** What the column of that name holds in each of them. */
export const LOT = 'Lot as SOURCE/LOT'

export const CRITERION: Column<{ readonly verdict: Verdict }> = {
  name: 'criterion',
  type: 'text',
  required: true,
  description: 'Set of criteria',
  of: ({ verdict }) => verdict.criterion,
}

export const GOVERNS: Column<{ readonly governs: boolean }> = {
  name: 'governs',
  type: 'boolean',
  required: true,
  description: 'Whether the set governs the lot',
  of: ({ governs }) => governs,
}

/** Documents keep what was said when they were issued; tables do not. */
export const OF_TODAY =
  'It holds what today’s records give: where one was changed after a certificate was issued, the certificate says otherwise.'

/** Which year the rows stand under. */
export const YEAR_OF_SAMPLING = 'The year is that of sampling.'

/** A table whose rows are made of lots, one lot after the other. */
export interface LotTable extends TableHead {
  /** @param lots in order of sampling */
  readonly fill: (edition: Edition, lots: readonly LotEntry[]) => FilledColumn[]
}

type RowsOfLot<Row> = (lot: LotEntry, edition: Edition) => readonly Row[]

export function lotTable<Row>(
  head: Pick<TableHead, 'name' | 'title' | 'description'>,
  columns: readonly Column<Row>[],
  rowsOf: RowsOfLot<Row>,
): LotTable {
  return {
    ...head,
    keys: ['source', 'year'],
    columns: headsOf(columns),
    fill: (edition, lots) =>
      filled(
        columns,
        lots.flatMap((lot) => rowsOf(lot, edition)),
      ),
  }
}

/** Reasons as their permanent codes; null for none. */
export function codes(reasons: readonly { readonly code: string }[]): string | null {
  return reasons.map(({ code }) => code).join(' ') || null
}
