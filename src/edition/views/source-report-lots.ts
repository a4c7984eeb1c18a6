/** Lots of a report, oldest first: what the source's page lists, with silo, laboratory and number of findings. */
import type { Edition } from '../shape/edition.ts'
import { findingsPublished } from './findings.ts'
import type { SourceLot } from './source-lots.ts'
import { lotTable, type LotTableRow, type LotTableView } from './source-lot-table.ts'

export interface ReportLots {
  readonly columns: LotTableView['columns']
  readonly rows: readonly ReportLot[]
  /** The class where all lots share one, so that no row repeats it. */
  readonly oneClass: string | null
  /** Laboratories by the letter that a row names them with, in order of use. */
  readonly laboratories: readonly { readonly letter: string; readonly name: string }[]
}

export interface ReportLot extends LotTableRow {
  /** Empty where it is not on record. */
  readonly silo: string
  /** Letters of the laboratories. */
  readonly laboratories: string
  /** How many; a dash where findings are not published. */
  readonly findings: string
}

/** @param lots in order of sampling */
export function reportLots(edition: Edition, lots: readonly SourceLot[]): ReportLots {
  const { columns, rows } = lotTable(edition, lots)
  const published = findingsPublished(edition)
  const ids = [...new Set(lots.flatMap(laboratoriesOf))]
  const letterOf = (id: string) => String.fromCodePoint('a'.charCodeAt(0) + ids.indexOf(id))
  const classes = new Set(rows.map((row) => row.class))
  return {
    columns,
    oneClass: classes.size === 1 ? (rows[0]?.class ?? null) : null,
    laboratories: ids.map((id) => ({ letter: letterOf(id), name: edition.laboratories.get(id)?.name ?? id })),
    // The table lists the newest first.
    rows: rows.toReversed().map((row, place) => ({
      ...row,
      silo: edition.lot(row.id).record.silo ?? '',
      laboratories: laboratoriesOf(lots[place]).map(letterOf).join(', '),
      findings: published ? String(lots[place]?.row.findingCount ?? 0) : '—',
    })),
  }
}

function laboratoriesOf(lot: SourceLot | undefined): string[] {
  return [...new Set([...(lot?.origins.values() ?? [])].map(({ laboratory }) => laboratory))]
}
