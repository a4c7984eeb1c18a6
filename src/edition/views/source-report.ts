/** A source's history for filing: what its page says, for all years or one, unfolded and with room to sign. */
import { lastDayOf, type Moment, readMoment, yearOf } from '../../core/measure/moment.ts'
import { period as periodWords } from '../../words/dates.ts'
import { phaseWords } from '../../words/laboratory-records.ts'
import { newestListedWords } from '../../words/source-report.ts'
import type { Edition, ListedLot, SourceEntry } from '../shape/edition.ts'
import { type AgencyView, agencyView } from './agency.ts'
import { type OverdueLine, overdueLines } from './overdue.ts'
import { type TotalLine, shipmentTotals } from './shipment-totals.ts'
import { type LaboratoryLine, sourceLaboratories } from './source-laboratories.ts'
import { type FailedLots, failedLots } from './source-failed.ts'
import { type SourceListing, sourceListing } from './source-listing.ts'
import { type SourceLot, sourceLots } from './source-lots.ts'
import { governingKey, type Head, headOf } from './source-page.ts'
import { dateAxis } from './source-axis.ts'
import { type SourceCharts, sourceCharts } from './source-panels.ts'
import { type SourceQuestions, sourceQuestions } from './source-questions.ts'
import { type Completeness, completenessOf } from './source-report-completeness.ts'
import { type ReportLots, reportLots } from './source-report-lots.ts'
import { type ReportRevision, reportRevisions } from './source-report-revisions.ts'
import { closestToLimit, judgedSeries } from './judged-series.ts'
import { yearsOf } from './years.ts'

/** A source and a calendar year; null for all of its history. */
export interface ReportOf {
  readonly source: string
  readonly year: string | null
}

export interface SourceReportView extends Head {
  /** "2025", or "all years". */
  readonly title: string
  /** First to last sampling. */
  readonly sampled: string
  /** Last day of the period, or that of the records. */
  readonly end: Moment
  /** The period is over: what is asked of all of the source's records would reach beyond it. */
  readonly isPast: boolean
  /** On that day. */
  readonly listing: SourceListing
  readonly completeness: Completeness
  readonly lots: ReportLots
  /** What is listed of a history too long for one page, and where the rest stands; null where all lots are. */
  readonly newest: { readonly text: string; readonly years: readonly string[] } | null
  /** With the clause that is not met, and by how much. */
  readonly failed: FailedLots
  readonly charts: SourceCharts | null
  readonly agency: AgencyView
  readonly laboratories: readonly LaboratoryLine[]
  readonly phases: readonly string[]
  readonly questions: SourceQuestions
  /** Open ones first. */
  readonly answered: SourceQuestions['open']
  readonly unanswered: SourceQuestions['open']
  readonly overdue: readonly OverdueLine[]
  readonly revisions: readonly ReportRevision[]
  /** By month. */
  readonly shipped: readonly TotalLine[]
}

/** Lots that the report on all years lists; the report on a year lists all of its lots. */
const LISTED = 1000

/** Every report: the whole history of each source, then its years, the latest first. */
export function reportsOf(edition: Pick<Edition, 'sources' | 'lotsOf'>): ReportOf[] {
  return [...edition.sources.keys()].flatMap((source) =>
    [null, ...yearsOf(edition.lotsOf(source).map(({ sampled }) => sampled))].map((year) => ({
      source,
      year,
    })),
  )
}

/**
 * A year's report is on the lots sampled and the shipments made in it; results that came later count as they stand. Where
 * the source stood with the agency is told for the year's last day, and nothing is asked that later lots gave reason for.
 * @throws RangeError for a source that is not in the edition
 */
export function sourceReportView(edition: Edition, { source: id, year }: ReportOf): SourceReportView {
  const source = edition.source(id)
  const all = sourceLots(edition, id)
  const lots = year === null ? all : all.filter(({ row }) => yearOf(row.sampled) === year)
  const listed = year === null ? lots.slice(-LISTED) : lots
  const rows = lots.map(({ row }) => row)
  const end = endOf(edition, year)
  const asked = end.day < edition.asOf.day ? { ...source, findings: [] } : source
  const questions = sourceQuestions(edition, asked, {
    rows: listed.map(({ row }) => row),
    most: Number.POSITIVE_INFINITY,
  })
  return {
    ...headOf(edition, source),
    title: year ?? 'all years',
    sampled: sampledWords(rows),
    end,
    isPast: end.day < edition.asOf.day,
    listing: sourceListing({ asOf: end }, source),
    completeness: completenessOf({ edition, source, all, lots }, year),
    lots: reportLots(edition, listed),
    newest: newestOf(rows, listed.length),
    failed: failedLots(edition, source, lots),
    charts: chartsOf(edition, source, lots, year),
    agency: year === null ? agencyView(edition, id) : agencyView(edition, id, idsOf(rows)),
    laboratories: sourceLaboratories(edition, lots),
    phases: (source.record.phases ?? []).map(phaseWords),
    questions,
    answered: [...questions.open, ...questions.closed].filter(({ answer }) => answer !== null),
    unanswered: questions.open.filter(({ answer }) => answer === null),
    overdue: overdueLines(edition, rows),
    revisions: reportRevisions(listed),
    shipped: shippedIn(edition, { source: id, year }),
  }
}

/** @param listed how many of them are */
function newestOf(rows: readonly ListedLot[], listed: number): SourceReportView['newest'] {
  if (listed === rows.length) return null
  return {
    text: newestListedWords(listed, rows.length),
    years: yearsOf(rows.slice(0, -listed).map(({ sampled }) => sampled)),
  }
}

function sampledWords(rows: readonly ListedLot[]): string {
  const [first, last] = [rows[0], rows.at(-1)]
  return first === undefined || last === undefined ? 'no lot' : periodWords(first.sampled, last.sampled)
}

function idsOf(rows: readonly ListedLot[]): (id: string) => boolean {
  const ids = new Set(rows.map(({ id }) => id))
  return (id) => ids.has(id)
}

function endOf({ asOf }: Edition, year: string | null): Moment {
  const last = year === null ? asOf : lastDayOf(`${year}-12`)
  return last.day < asOf.day ? last : asOf
}

/** Nothing is folded on paper; a year's axis is the year, or what of it has passed. */
function chartsOf(
  edition: Edition,
  source: SourceEntry,
  lots: readonly SourceLot[],
  year: string | null,
): SourceCharts | null {
  const closest = closestToLimit(judgedSeries(lots))?.values.at(-1)?.judged
  const until = endOf(edition, year).day
  const since = year === null ? undefined : readMoment(`${year}-01-01`).day
  const of = { edition, source, lots, governing: governingKey(source, closest) }
  const charts = sourceCharts(of, (own) => dateAxis(own, until, since))
  return charts === null
    ? null
    : { ...charts, panels: [...charts.panels, ...charts.more], more: [], moreNames: [] }
}

function shippedIn(edition: Edition, { source, year }: ReportOf): readonly TotalLine[] {
  const own = edition.shipmentsOf(source).filter(({ date }) => year === null || yearOf(date) === year)
  return shipmentTotals(edition, own).find(({ by }) => by === 'Month')?.lines ?? []
}
