/**
 * One table of a certificate's results with their limits, as it is printed: the rows that result-rows.ts
 * chooses, in words.
 */
import type { Outcome } from '../../core/criteria/outcome.ts'
import { defined } from '../../core/measure/defined.ts'
import { outcomeWords } from '../../words/outcomes.ts'
import { shortDate } from '../../words/dates.ts'
import { limitText } from '../../words/limits.ts'
import { unbroken } from '../../words/sentences.ts'
import { usText } from '../../words/units.ts'
import type { CertificateDocument, DocumentResult } from '../shape/document.ts'
import type { Edition } from '../shape/edition.ts'
import type { DocumentClause } from './document-clauses.ts'
import { isDoubtful, reasonToTell } from './row-reasons.ts'
import { type PlainLine, plainLine } from './plain-line.ts'
import { type ResultTable, resultTables, type TableRow } from './result-rows.ts'
import { remarks, rowTitle, rowValue, type TableContext } from './result-words.ts'
import type { StripInput } from '../../charts/limit-strip.ts'

export interface ResultTableView {
  readonly title: string
  readonly lines: readonly ResultLine[]
  readonly plain: readonly PlainLine[]
  /** Stands before the first plain line. */
  readonly plainLead: string
}

export interface ResultLine {
  /** The heading of the group that begins with this line. */
  readonly opens: { readonly title: string; readonly demand: string; readonly outcome: Outcome } | null
  readonly member: boolean
  readonly deviation: boolean
  readonly title: string
  readonly remarks: string
  readonly doubt: { readonly text: string; readonly onPaper: boolean } | null
  readonly why: string | null
  readonly value: string
  /** The value in US customary units, where the site prints those first. */
  readonly american: string | null
  readonly strip: (StripInput & { readonly outcome: Outcome }) | null
  readonly limit: string | null
  readonly outcome: Outcome
  /** "pending" with its due date. */
  readonly awaited: { readonly words: string; readonly due: string } | null
}

/** The tables of a certificate, those without any line left out. */
export function resultTableViews(
  edition: Pick<Edition, 'site'>,
  document: CertificateDocument,
): ResultTableView[] {
  const context: TableContext = {
    document,
    severalLaboratories: document.laboratories.length > 1,
    severalSamples: new Set(document.results.map((result) => result.sample)).size > 1,
  }
  return resultTables(document).map((table) => tableView(table, context, edition.site.units))
}

function tableView(table: ResultTable, context: TableContext, units: 'SI' | 'US'): ResultTableView {
  const withValue = new Set(table.rows.filter(({ kind }) => kind === 'value').map((row) => row.property))
  return {
    title: table.title,
    lines: table.rows.map((row) => ({
      ...judgementOf(row),
      opens: opening(row),
      member: row.member,
      deviation: row.kind === 'deviation',
      title: unbroken(rowTitle(row, context)),
      remarks: unbroken(remarks(row, context, withValue)),
      why: reasonToTell(row, context.document),
      value: rowValue(row),
      american: row.kind === 'value' && units === 'US' ? american(row.result) : null,
    })),
    plain: table.plain.map((line) => plainLine(line, context)),
    plainLead: table.rows.length > 0 ? 'Without a limit:' : 'Reported, no limit asked for:',
  }
}

function opening({ opens }: TableRow): ResultLine['opens'] {
  if (opens === null) return null
  return {
    title: opens.title,
    demand: opens.combine === 'any-of' ? 'one of these is enough' : 'all of these must hold',
    outcome: opens.outcome,
  }
}

function american(result: DocumentResult | null): string | null {
  return result === null ? null : usText(result.value, result.unit)
}

type Judged = Pick<ResultLine, 'doubt' | 'strip' | 'limit' | 'outcome' | 'awaited'>

function judgementOf({ clause, result, under }: TableRow): Judged {
  if (clause === null) {
    const outcome = result?.valid === false ? 'not-valid' : 'reported'
    return { doubt: null, strip: null, limit: null, outcome, awaited: null }
  }
  const { doubt, limit, outcome, due } = clause
  return {
    doubt: doubt === undefined ? null : { text: doubt, onPaper: under === null && isDoubtful(clause) },
    strip: stripOf(clause),
    limit: limit === null ? null : limitText(limit),
    outcome,
    awaited:
      outcome === 'pending' && due !== undefined
        ? { words: outcomeWords('pending'), due: shortDate(due) }
        : null,
  }
}

function stripOf({ limit, value, uncertainty, outcome }: DocumentClause): ResultLine['strip'] {
  if (limit === null) return null
  const { operator, values } = limit
  return { ...defined({ value, operator, values, u: uncertainty?.u }), outcome }
}
