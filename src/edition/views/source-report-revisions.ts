/** Certificates that were issued again, and printed values that differ today. */
import { shortDate } from '../../words/dates.ts'
import type { SourceLot } from './source-lots.ts'

export interface ReportRevision {
  readonly id: string
  readonly number: string
  /** Each with number and day, and what it was made for. */
  readonly revisions: readonly string[]
  /** Printed value and the one of today. */
  readonly changed: readonly string[]
}

/** In order of sampling. */
export function reportRevisions(lots: readonly SourceLot[]): ReportRevision[] {
  return lots
    .filter(({ revisions, changed }) => 1 < revisions.length || 0 < changed.length)
    .map(({ row, revisions, changed }) => ({
      id: row.id,
      number: row.number,
      revisions: revisions
        .slice(1)
        .map(({ number, date, reason }) => `${number}, ${shortDate(date)}: ${reason}`),
      changed,
    }))
}
