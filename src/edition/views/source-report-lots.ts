/** Lots of a report, oldest first: what the source's page lists, with silo, laboratory and number of findings. */
import type { Edition } from '../shape/edition.ts'
import { findingsPublished } from './findings.ts'
import type { SourceLot } from './source-lots.ts'
import { lotTable, type LotTableRow, type LotTableView } from './source-lot-table.ts'

export interface ReportLots {
  readonly columns: LotTableView['columns']
  readonly rows: readonly ReportLot[]
}

export interface ReportLot extends LotTableRow {
  /** Silo and laboratories, as far as they are on record. */
  readonly from: string
  /** How many; a dash where findings are not published. */
  readonly findings: string
}

/** @param lots in order of sampling */
export function reportLots(edition: Edition, lots: readonly SourceLot[]): ReportLots {
  const { columns, rows } = lotTable(edition, lots)
  const published = findingsPublished(edition)
  return {
    columns,
    // The table lists the newest first.
    rows: rows.toReversed().map((row, place) => ({
      ...row,
      from: fromWords(edition, lots[place]),
      findings: published ? String(lots[place]?.row.findingCount ?? 0) : '—',
    })),
  }
}

function fromWords(edition: Edition, lot: SourceLot | undefined): string {
  if (lot === undefined) return ''
  const { silo } = edition.lot(lot.row.id).record
  const ids = new Set([...lot.origins.values()].map(({ laboratory }) => laboratory))
  const names = [...ids].map((id) => edition.laboratories.get(id)?.name ?? id)
  return [...(silo === undefined ? [] : [silo]), ...names].join('; ')
}
