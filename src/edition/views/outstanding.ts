/** Everything that is due or has not come, of all sources, by day: results, certificates, monthly reports, lot numbers. */
import { reportDue, reportFindings } from '../../core/checks/monthly-reports.ts'
import {
  compareMoments,
  dateOf,
  isBy,
  lastDayOf,
  type Moment,
  monthNumber,
  monthOf,
  monthOfNumber,
  readMoment,
} from '../../core/measure/moment.ts'
import { knownSince } from '../../core/result/result.ts'
import {
  numberMissingWords,
  OUTSTANDING_KINDS,
  type OutstandingKind,
  reportDueWords,
  reportMissingWords,
  toIssueWords,
} from '../../words/outstanding.ts'
import { dueWords, overdueWords, testName } from '../../words/standing.ts'
import { producersResults } from '../shape/producers-results.ts'
import { isDue } from '../shape/due.ts'
import { paths } from '../shape/addresses.ts'
import type { Edition, ListedLot, SourceEntry } from '../shape/edition.ts'
import { namedTest } from '../shape/standing.ts'
import { type Linked, linked } from './linked.ts'
import { gapsOf } from './source-months.ts'
import { partOfSource } from '../shape/part-of-source.ts'

export interface OutstandingLine {
  readonly kind: OutstandingKind
  /** "Result overdue". */
  readonly label: string
  /** Since when it has been outstanding, or when it is due. */
  readonly day: Moment
  readonly text: string
  /** null for what concerns a source as a whole. */
  readonly lot: Linked | null
  readonly source: Linked
}

export interface OutstandingView {
  /** Overdue or missing, the longest first. */
  readonly past: readonly OutstandingLine[]
  /** Still in time, the next first. */
  readonly coming: readonly OutstandingLine[]
}

/** A report that came late is no longer outstanding: the pages of the sources count it. */
export function outstandingView(edition: Edition): OutstandingView {
  const lines = [...edition.sources.keys()].flatMap((id) => linesAt(edition, id))
  const kinds = Object.keys(OUTSTANDING_KINDS)
  lines.sort(
    (a, b) => compareMoments(dateOf(a.day), dateOf(b.day)) || kinds.indexOf(a.kind) - kinds.indexOf(b.kind),
  )
  const isComing = ({ kind }: OutstandingLine) => kind === 'result-due' || kind === 'report-due'
  return { past: lines.filter((line) => !isComing(line)), coming: lines.filter(isComing) }
}

type Told = Pick<OutstandingLine, 'kind' | 'day' | 'text'> & { readonly of?: ListedLot }

const linesAt = partOfSource('outstanding', (edition: Edition, id) => linesOf(edition, edition.source(id)))

function linesOf(edition: Edition, source: SourceEntry): OutstandingLine[] {
  const lots = edition.lotsOf(source.id)
  const told = [
    ...lots.flatMap((lot) => resultsOf(edition, lot)),
    ...lots.flatMap((lot) => certificateOf(edition, lot)),
    ...reportsOf(edition, source),
    ...numbersOf(source, lots),
  ]
  const place = linked(edition, source.record.name, paths.source(source.id))
  return told.map(({ of: lot, ...line }) => ({
    ...line,
    label: OUTSTANDING_KINDS[line.kind],
    lot: lot === undefined ? null : linked(edition, lot.number, paths.certificate(lot.id)),
    source: place,
  }))
}

function resultsOf(edition: Edition, lot: ListedLot): Told[] {
  return lot.awaited.map((test) => {
    const due = `${testName(namedTest(edition, test))}, ${dueWords(test.due)}`
    return test.overdueSince === undefined
      ? { kind: 'result-due', day: test.due, text: due, of: lot }
      : {
          kind: 'result-overdue',
          day: test.overdueSince,
          text: `${due}, ${overdueWords(test.overdueSince)}`,
          of: lot,
        }
  })
}

/** Of a lot that waits to be issued, as `npm run issue -- --due` finds it; a complete certificate awaits nothing. */
function certificateOf(edition: Edition, lot: ListedLot): Told[] {
  const { state } = lot
  if (state !== 'draft' && state !== 'provisional') return []
  const entry = edition.lot(lot.id)
  const since = producersResults(entry).map(knownSince).toSorted(compareMoments).at(-1)
  if (since === undefined || !isDue(entry)) return []
  return [{ kind: 'certificate-to-issue', day: since, text: toIssueWords(state, since), of: lot }]
}

function reportsOf({ asOf }: Edition, { id, record: { reports } }: SourceEntry): Told[] {
  if (reports === undefined) return []
  const { from, due, received = [] } = reports
  const runs = reportFindings({ source: id, from, dueHours: due.value, received }, asOf).flatMap(
    ({ findings }) =>
      findings.flatMap(({ reason }) => (reason.code === 'report-missing' ? [reason.params] : [])),
  )
  return [
    ...runs.map(
      (run): Told => ({
        kind: 'report-missing',
        day: readMoment(run.due),
        text: reportMissingWords(run),
      }),
    ),
    ...monthsDue(asOf, from, due.value)
      .filter(({ month }) => !received.some((one) => one.month === month))
      .map(({ month, day }): Told => ({ kind: 'report-due', day, text: reportDueWords(month, day) })),
  ]
}

/** Months that are over and whose report may still come in time. */
function monthsDue(asOf: Moment, from: string, dueHours: number): { month: string; day: Moment }[] {
  const found: { month: string; day: Moment }[] = []
  for (let number = monthNumber(monthOf(asOf)); ; number -= 1) {
    const month = monthOfNumber(number)
    const day = reportDue(month, dueHours)
    if (month < from || day.day < asOf.day) return found
    if (isBy(lastDayOf(month), asOf)) found.push({ month, day })
  }
}

function numbersOf(source: SourceEntry, lots: readonly ListedLot[]): Told[] {
  return (gapsOf(source, lots) ?? []).map((gap) => ({
    kind: 'number-missing',
    day: gap.sampled,
    text: numberMissingWords(gap),
  }))
}
