/**
 * One table of a certificate's results with their limits, as it is printed: the rows that result-rows.ts
 * chooses, in words.
 */
import { defined } from '../../core/measure/defined.ts'
import { property } from '../../core/measure/properties.ts'
import { shortDate } from '../../words/dates.ts'
import { COMBINED } from '../../words/outcomes.ts'
import { limitText } from '../../words/limits.ts'
import { unbroken } from '../../words/sentences.ts'
import type { CertificateFacts } from '../shape/certificate-facts.ts'
import type { PrintedLine, PrintedTable } from '../shape/printed-certificate.ts'
import { printedStrip } from '../shape/strip.ts'
import { plainLine } from './plain-line.ts'
import { regularLines } from './regular-line.ts'
import { type ResultTable, resultTables, type TableRow } from './result-rows.ts'
import { NO_METHOD, remarks, rowTitle, rowFigures, type TableContext } from './result-words.ts'
import { reasonToTell } from './row-reasons.ts'

/** Before results of other samples, or of tests replaced since: their property has a limit. */
const OTHER_RESULTS = 'Other results of properties with a limit, not judged:'

/** Said once of a table, in place of a remark on each of its results. */
const NO_METHODS = 'No test method is recorded for these results.'

/** Some tables of a certificate, those without any line left out. */
export function printedTables(
  facts: CertificateFacts,
  groups: readonly ResultTable['group'][],
): PrintedTable[] {
  const context = {
    facts,
    severalLaboratories: facts.laboratories.length > 1,
    severalSamples: new Set(facts.results.map((result) => result.sample)).size > 1,
  }
  return resultTables(facts)
    .filter(({ group }) => groups.includes(group))
    .map((table) =>
      printedTable(table, { ...context, noMethod: lacksMethods(table) ? undefined : NO_METHOD }),
    )
}

/** Whether several results of a table were measured, and none by a method on record or at a condition that has one. */
function lacksMethods({ rows, plain, others }: ResultTable): boolean {
  const results = [
    ...rows.flatMap(({ result }) => result ?? []),
    ...[...plain, ...others].flatMap((line) => line.results),
  ].filter((result) => property(result.property).nature !== 'derived')
  return (
    new Set(results.map(({ key }) => key)).size > 1 &&
    results.every(({ method, condition }) => method === undefined && condition === undefined)
  )
}

function printedTable(table: ResultTable, context: TableContext): PrintedTable {
  const withValue = new Set(table.rows.filter(({ kind }) => kind === 'value').map((row) => row.property))
  return defined({
    title: table.title,
    note: context.noMethod === undefined ? NO_METHODS : undefined,
    lines: table.rows.map((row) =>
      defined({
        ...judgementOf(row),
        opens: opening(row),
        member: row.member || undefined,
        kind: row.kind === 'deviation' ? 'deviation' : undefined,
        title: unbroken(rowTitle(row, context)),
        remarks: unbroken(remarks(row, context, withValue)),
        why: reasonToTell(row, context.facts) ?? undefined,
        ...rowFigures(row, context.facts.units),
      } as const),
    ),
    plain: [
      ...table.plain.map((line) => plainLine(line, context)),
      ...regularLines(context.facts, table.group, context.noMethod),
      ...table.others.map((line, place) => ({
        ...(place === 0 ? { lead: OTHER_RESULTS } : {}),
        ...plainLine(line, context),
      })),
    ],
  })
}

function opening({ opens }: TableRow): PrintedLine['opens'] {
  if (opens === null) return undefined
  return {
    title: opens.title,
    demand: COMBINED[opens.combine ?? 'all-of'],
    outcome: opens.outcome,
  }
}

type Judged = Pick<PrintedLine, 'doubt' | 'strip' | 'limit' | 'outcome' | 'due'>

function judgementOf({ clause, result, under }: TableRow): Judged {
  if (clause === null) return { outcome: result?.valid === false ? 'not-valid' : 'reported' }
  const { doubt, limit, outcome, due, value, bounds, uncertainty } = clause
  return defined({
    doubt: under === null && clause.inDoubt === true ? doubt : undefined,
    strip: printedStrip(limit, bounds === undefined ? value : null, uncertainty?.u),
    limit: limit === null ? undefined : limitText(limit),
    outcome,
    due: outcome === 'pending' && due !== undefined ? shortDate(due) : undefined,
  })
}
