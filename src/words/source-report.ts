/** Words of a source's report for printing. */
import { number, plural } from './numbers.ts'

export interface ReportCounts {
  readonly lots: number
  readonly failed: number
  readonly withdrawn: number
  readonly notValid: number
  readonly pending: number
}

/** "15 lots: 2 do not meet, 0 withdrawn, 0 not valid, 1 pending". */
export function reportCountWords({ lots, failed, withdrawn, notValid, pending }: ReportCounts): string {
  const fail = `${failed} ${failed === 1 ? 'does' : 'do'} not meet`
  return `${plural(lots, 'lot', 'lots')}: ${fail}, ${withdrawn} withdrawn, ${notValid} not valid, ${pending} pending`
}

/** What a report on a history too long for one page lists. */
export function newestListedWords(listed: number, of: number): string {
  return `Lots, questions about lots, answers and revisions are listed for the newest ${number(listed, 0)} of ${number(of, 0)} lots; counts are of all. Earlier lots stand in the report on their year`
}

/** Numbers that no lot bears; null where nothing can be told. */
export function missingNumberWords(missing: readonly string[] | null): string {
  if (missing === null) return 'cannot be told from what is shown'
  return missing.length === 0 ? 'none' : missing.join(', ')
}

/** "1 late, 2 not on record"; null where no report is planned. */
export function reportsWords(reports: { readonly late: number; readonly missing: number } | null): string {
  return reports === null ? 'none planned' : `${reports.late} late, ${reports.missing} not on record`
}
