/** How complete a source's records are in the period of a report: lots, numbers, masses, monthly reports. */
import { monthOf } from '../../core/measure/moment.ts'
import { sum } from '../../core/statistics/descriptive.ts'
import { OTHER_LOTS } from '../../words/source-deliveries.ts'
import { missingNumberWords, reportCountWords, reportsWords } from '../../words/source-report.ts'
import { mass } from '../../words/source-strip.ts'
import type { Edition, SourceEntry } from '../shape/edition.ts'
import type { SourceFact } from './source-facts.ts'
import type { SourceLot } from './source-lots.ts'
import { gapsOf, type MonthLine, monthsWithin } from './source-months.ts'
import { monthCellsOf, type MonthTable, NO_REPORT_PLANNED } from './source-months-table.ts'
import { isFailed } from './source-strip.ts'

export interface Completeness {
  readonly facts: readonly SourceFact[]
  /** A row a month: a history of years is longer than a page is wide. */
  readonly months: MonthTable
}

interface Reported {
  readonly edition: Edition
  readonly source: SourceEntry
  /** Every lot of the source, and those of the period, in order of sampling. */
  readonly all: readonly SourceLot[]
  readonly lots: readonly SourceLot[]
}

/** @param year calendar year; null for all of the history */
export function completenessOf(of: Reported, year: string | null): Completeness {
  const { edition, source, all } = of
  const { units } = edition.site
  const within = monthsOfPeriod(of, year)
  const lines = within === null ? [] : monthsWithin(edition, source, all, within)
  const { told, table } = apart(monthCellsOf({ lines }, units))
  const massOf = (tonnes: (line: MonthLine) => number) => mass(sum(lines.map(tonnes)), units)
  return {
    facts: [
      { label: 'Lots', text: reportCountWords(countsOf(of)) },
      { label: 'Lot numbers missing', text: missingNumberWords(missingNumbers(of, year)) },
      { label: 'Lots with a certificate in force', text: massOf(({ certifiedT }) => certifiedT) },
      { label: 'Of them, lots that do not meet', text: massOf(({ failedT }) => failedT) },
      {
        label: 'Shipped of lots with a certificate in force',
        text: massOf(({ shippedT, shippedOtherT }) => shippedT - shippedOtherT),
      },
      { label: `Shipped of ${OTHER_LOTS}`, text: massOf(({ shippedOtherT }) => shippedOtherT) },
      { label: 'Monthly reports', text: reportsWords(reportsIn(source, lines)) },
      ...told,
    ],
    months: turned(table),
  }
}

/** From the first lot's month, or the year's first, to the last that has begun; null without a lot. */
function monthsOfPeriod({ edition, lots }: Reported, year: string | null): [string, string] | null {
  const [first] = lots
  if (first === undefined) return null
  const newest = monthOf(edition.asOf)
  if (year === null) return [monthOf(first.row.sampled), newest]
  const last = `${year}-12`
  return [`${year}-01`, last < newest ? last : newest]
}

function countsOf({ lots }: Reported) {
  const is = (mark: string) => lots.filter(({ standing }) => standing.mark === mark).length
  return {
    lots: lots.length,
    failed: lots.filter(isFailed).length,
    withdrawn: lots.filter(({ row }) => row.state === 'withdrawn').length,
    notValid: is('not-valid'),
    pending: is('pending') + is('meets-so-far'),
  }
}

/** A gap belongs to the year of the lot after it. */
function missingNumbers({ source, all }: Reported, year: string | null): string[] | null {
  const gaps = gapsOf(
    source,
    all.map(({ row }) => row),
  )
  if (gaps === null) return null
  return gaps
    .filter(({ month }) => year === null || month.startsWith(`${year}-`))
    .map(({ first, last }) => (first === last ? first : `${first} to ${last}`))
}

function reportsIn({ record }: SourceEntry, lines: readonly MonthLine[]) {
  if (record.reports === undefined) return null
  const count = (state: MonthLine['report']['state']) =>
    lines.filter(({ report }) => report.state === state).length
  return { late: count('late'), missing: count('missing') }
}

/** Words that every month would repeat are told once; that no report is planned is told already. */
function apart({ heads, rows }: MonthTable): {
  readonly told: readonly SourceFact[]
  readonly table: MonthTable
} {
  const alike = rows.filter(
    ({ cells: [first, ...others] }) =>
      first !== undefined && !/\d/.test(first.text) && others.every(({ text }) => text === first.text),
  )
  return {
    told: alike.flatMap(({ label, cells: [first] }) =>
      first === undefined || first.text === NO_REPORT_PLANNED ? [] : [{ label, text: first.text }],
    ),
    table: { heads, rows: rows.filter((row) => !alike.includes(row)) },
  }
}

/** Columns as rows. */
function turned({ heads, rows }: MonthTable): MonthTable {
  return {
    heads: rows.map(({ label }) => label),
    rows: heads.map((label, place) => ({
      label,
      cells: rows.flatMap(({ cells }) => cells[place] ?? []),
    })),
  }
}
