/** A source's page: ten statements, then the sections that they rest on. */
import type { Criterion } from '../../core/criteria/criterion.ts'
import type { MaterialKind } from '../../core/measure/material-kind.ts'
import { phaseWords } from '../../words/laboratory-records.ts'
import { listedSetName, setOfVerdict } from '../../words/outcomes.ts'
import { digestOf } from '../../records/issued/digest.ts'
import { wholeText } from '../shape/dependencies.ts'
import type { Edition, SourceEntry } from '../shape/edition.ts'
import { type AgencyView, agencyView } from './agency.ts'
import { type AtLimitView, limitHistograms } from './source-at-limits.ts'
import { type FailedLots, failedLots } from './source-failed.ts'
import { type JudgeUnderView, judgeUnderView } from './judge-under.ts'
import { lotsNamed } from '../shape/lots-named.ts'
import { shipmentsByYear } from '../shape/shipments-of-sources.ts'
import { lastLot } from './last-lot.ts'
import { type LaboratoryLine, sourceLaboratories } from './source-laboratories.ts'
import { type SourceListing, sourceListing } from './source-listing.ts'
import { batchesAsked, batchesUpTo } from './source-control-panel.ts'
import { type JudgedValue, originsOf, seriesKey, sourceLots } from './source-lots.ts'
import { lotTable, type LotTableView } from './source-lot-table.ts'
import { monthsOf, type SourceMonths } from './source-months.ts'
import { type SourceCharts, sourceCharts } from './source-panels.ts'
import { type SourceQuestions, sourceQuestions } from './source-questions.ts'
import { governingShipped, type ShippedCharts } from './source-shipped-panels.ts'
import { ofLastYear, sourceStrip, type StripLine } from './source-strip.ts'
import { closestToLimit, judgedSeries } from './judged-series.ts'
import { type Unchecked, uncheckedOf } from './source-unchecked.ts'
import { type OverdueLine, overdueLines } from './overdue.ts'
import { type RoutesOfSourceView, routesOfSource } from './routes.ts'
import { type SourceFact, sourceFacts } from './source-facts.ts'
import { yearsOf } from './years.ts'

export interface SourcePageView {
  readonly id: string
  readonly name: string
  readonly kind: MaterialKind
  /** Name of the producer. */
  readonly producer: string | undefined
  readonly unit: string | undefined
  /** The governing set of the newest lot with its edition and the class judged. */
  readonly set: string | null
  /** The verdict rests on limits that nobody has confirmed. */
  readonly trial: boolean
  readonly strip: readonly StripLine[]
  readonly questions: SourceQuestions
  readonly failed: FailedLots
  readonly charts: SourceCharts | null
  /** What governs, over the newest shipments. */
  readonly shipped: ShippedCharts | null
  /** Limits that enough lots were judged by. */
  readonly atLimits: readonly AtLimitView[]
  readonly agency: AgencyView
  readonly months: SourceMonths
  readonly lots: LotTableView
  readonly laboratories: readonly LaboratoryLine[]
  /** Phases that its record declares. */
  readonly phases: readonly string[]
  readonly listing: SourceListing
  readonly unchecked: readonly Unchecked[]
  /** The longest missing first. */
  readonly overdue: readonly OverdueLine[]
  readonly facts: readonly SourceFact[]
  /** Criteria, the governing one first. */
  readonly criteria: readonly { readonly id: string; readonly name: string }[]
  readonly routes: RoutesOfSourceView
  readonly lotCount: number
  /** The latest first. */
  readonly years: readonly string[]
  readonly shipmentYears: readonly string[]
  readonly judgeUnder: JudgeUnderView
}

/** Lots listed; the register has them all. */
const NEWEST = 50

/** @throws RangeError for a source that is not in the edition */
export function sourcePageView(edition: Edition, id: string): SourcePageView {
  return {
    ...edition.ofSource(
      id,
      'page',
      () => ownPart(edition, id),
      () => `${namedRestOn(edition, id)} ${batchesRestOn(edition, id)}`,
    ),
    routes: routesOfSource(edition, id),
  }
}

/** A finding may name a lot of another source. */
function namedRestOn(edition: Edition, id: string): string {
  return lotsNamed(edition, id)
    .bySource.map((lot) => (edition.lots.has(lot) ? edition.restsOn(`lot ${lot}`) : lot))
    .join()
}

/** Its charts show batches of its laboratories that none of its lots rests on. */
function batchesRestOn(edition: Edition, id: string): string {
  const asked = edition.ofSource(id, 'batches asked', () =>
    batchesAsked(
      edition.lotsOf(id).map((row) => ({ origins: originsOf(edition, edition.lot(row.id).results) })),
    ),
  )
  return digestOf(wholeText(batchesUpTo(edition, asked)))
}

/** All that the page takes from its source and from lots that are named there. */
function ownPart(edition: Edition, id: string): Omit<SourcePageView, 'routes'> {
  const source = edition.source(id)
  const lots = sourceLots(edition, id)
  const closest = closestToLimit(judgedSeries(ofLastYear(edition, lots)))
  const governing = governingKey(source, closest?.values.at(-1)?.judged)
  const questions = sourceQuestions(edition, source)
  const criteria = source.criteria.flatMap((set) => edition.criteria.get(set) ?? [])
  const atLimits = limitHistograms(edition, source)
  const charted = { edition, source, lots, governing }
  return {
    ...headOf(edition, source),
    strip: sourceStrip({ edition, source, lots, questions, closest, governing, atLimits }),
    questions,
    failed: failedLots(edition, source, lots),
    charts: sourceCharts(charted),
    shipped: governingShipped(charted),
    atLimits,
    agency: agencyView(edition, id),
    months: monthsOf(edition, source, lots),
    lots: lotTable(edition, lots.slice(-NEWEST)),
    laboratories: sourceLaboratories(edition, lots),
    phases: (source.record.phases ?? []).map(phaseWords),
    listing: sourceListing(edition, source),
    unchecked: uncheckedOf(edition, source, lots),
    overdue: overdueLines(edition, edition.lotsOf(id)),
    facts: sourceFacts(edition, source),
    criteria: criteria.map(criterionLine),
    ...waysToLots(edition, id),
    judgeUnder: judgeUnderView(edition, { source: id }),
  }
}

export type Head = Pick<SourcePageView, 'id' | 'name' | 'kind' | 'producer' | 'unit' | 'set' | 'trial'>

/** What a source is, and by what its newest lot is judged. */
export function headOf(edition: Edition, { id, record }: SourceEntry): Head {
  const last = lastLot(edition.lotsOf(id))
  const verdict = last && edition.lot(last.id).verdicts[0]
  const criterion = verdict && edition.criteria.get(verdict.criterion)
  return {
    id,
    name: record.name,
    kind: record.kind,
    producer: edition.producers.get(record.producer)?.name,
    unit: record.unit ?? record.deposit,
    set: verdict === undefined || criterion === undefined ? null : setOfVerdict(verdict, criterion),
    trial: verdict?.trial === true,
  }
}

function criterionLine(criterion: Criterion): SourcePageView['criteria'][number] {
  return { id: criterion.id, name: listedSetName(criterion) }
}

/** An index governs where one is judged: the value closest to its limit where that is one, else the first series. */
export function governingKey({ series }: SourceEntry, closest: JudgedValue | undefined): string | null {
  const own = series.find((candidate) => candidate.property === closest?.property)
  const index = series.find(({ property }) => property === 'strength-activity-index')
  const head = own ?? index ?? series[0]
  return head === undefined ? null : seriesKey(head)
}

function waysToLots(
  edition: Edition,
  id: string,
): Pick<SourcePageView, 'lotCount' | 'years' | 'shipmentYears'> {
  const lots = edition.lotsOf(id)
  return {
    lotCount: lots.length,
    years: yearsOf(lots.map(({ sampled }) => sampled)),
    shipmentYears: shipmentsByYear(edition, id).map(([year]) => year),
  }
}
