/** A source's page: its last verdict, trends under its criteria, findings, and the ways to its lots. */
import type { Criterion } from '../../core/criteria/criterion.ts'
import type { MaterialKind } from '../../core/measure/material-kind.ts'
import { property, type PropertyKey } from '../../core/measure/properties.ts'
import { listedSetName, setOfVerdict } from '../../words/outcomes.ts'
import type { LotStanding } from '../../words/standing.ts'
import { conditionTitle } from '../shape/condition-title.ts'
import type { Edition, ListedLot, Series, SourceEntry } from '../shape/edition.ts'
import { standingOf } from '../shape/standing.ts'
import { sentencesOfVerdict } from '../shape/verdict-words.ts'
import { findingsOfLots, findingsPublished, type ListedFinding, listedFindings } from './findings.ts'
import { type JudgeUnderView, judgeUnderView } from './judge-under.ts'
import { lastLot } from './last-lot.ts'
import { type LotLine, lotLines } from './lot-lines.ts'
import { type OverdueLine, overdueLines } from './overdue.ts'
import { type RoutesOfSourceView, routesOfSource } from './routes.ts'
import { type SourceFact, sourceFacts } from './source-facts.ts'
import { inUnits, type TrendChartView, trendChartView } from './trend-chart.ts'
import { seriesTitle, trendContext, trendEvents } from './trends.ts'
import { yearsOf } from './years.ts'

export interface SourcePageView {
  readonly id: string
  readonly name: string
  readonly kind: MaterialKind
  /** Name of the producer. */
  readonly producer: string | undefined
  /** null without a lot, or where no criterion applies to the last one. */
  readonly last: LastVerdict | null
  /** The longest missing first. */
  readonly overdue: readonly OverdueLine[]
  readonly facts: readonly SourceFact[]
  /** Criteria, the governing one first. */
  readonly criteria: readonly { readonly id: string; readonly name: string }[]
  readonly published: boolean
  readonly findings: readonly ListedFinding[]
  /** Charts that stand open, and those folded in. */
  readonly charts: readonly TrendChartView[]
  readonly more: readonly TrendChartView[]
  readonly routes: RoutesOfSourceView
  readonly lotCount: number
  /** The newest lots first, as many as a page has room for. */
  readonly lots: readonly LotLine[]
  /** The latest first. */
  readonly years: readonly string[]
  readonly shipmentYears: readonly string[]
  readonly judgeUnder: JudgeUnderView
}

export interface LastVerdict extends Pick<ListedLot, 'id' | 'number' | 'sampled'> {
  /** State and governing verdict. */
  readonly standing: LotStanding
  /** The governing set with its edition and the class judged. */
  readonly set: string
  /** The verdict rests on limits that nobody has confirmed. */
  readonly trial: boolean
  /** What decided, and what is met so far. */
  readonly reasons: readonly string[]
}

/** Charts that stand open; the others are folded in. */
const OPEN: readonly PropertyKey[] = [
  'strength-activity-index',
  'resistivity-index',
  'loss-on-ignition',
  'residue-45um',
  'density',
]
/** Lots listed; the register has them all. */
const NEWEST = 50
/** Reasons of a verdict given in its head. */
const REASONS = 2

/** @throws RangeError for a source that is not in the edition */
export function sourcePageView(edition: Edition, id: string): SourcePageView {
  const source = edition.source(id)
  const { name, kind, producer } = source.record
  const lots = edition.lotsOf(id)
  const criteria = source.criteria
    .map((set) => edition.criteria.get(set))
    .filter((criterion) => criterion !== undefined)
  return {
    id,
    name,
    kind,
    producer: edition.producers.get(producer)?.name,
    last: lastVerdict(edition, lastLot(lots)),
    overdue: overdueLines(edition, lots),
    facts: sourceFacts(edition, source),
    criteria: criteria.map(criterionLine),
    published: findingsPublished(edition),
    findings: listedFindings(edition, [...source.findings, ...findingsOfLots(edition, lots)]),
    ...trendsOf(edition, source, criteria),
    routes: routesOfSource(edition, id),
    ...waysToLots(edition, id),
    judgeUnder: judgeUnderView(edition, { source: id }),
  }
}

function criterionLine(criterion: Criterion): SourcePageView['criteria'][number] {
  return { id: criterion.id, name: listedSetName(criterion) }
}

function waysToLots(
  edition: Edition,
  id: string,
): Pick<SourcePageView, 'lotCount' | 'lots' | 'years' | 'shipmentYears'> {
  const lots = edition.lotsOf(id)
  const shipped = edition.shipments.filter(({ source }) => source === id)
  return {
    lotCount: lots.length,
    lots: lotLines(edition, lots.slice(-NEWEST).reverse()),
    years: yearsOf(lots.map(({ sampled }) => sampled)),
    shipmentYears: yearsOf(shipped.map(({ date }) => date)),
  }
}

function trendsOf(
  edition: Edition,
  source: SourceEntry,
  criteria: readonly Criterion[],
): Pick<SourcePageView, 'charts' | 'more'> {
  const chartsOf = (series: readonly Series[]) => series.map((own) => trendOf(edition, source, own, criteria))
  return {
    charts: chartsOf(source.series.filter((series) => OPEN.includes(series.property))),
    more: chartsOf(source.series.filter((series) => !OPEN.includes(series.property))),
  }
}

function lastVerdict(edition: Edition, last: ListedLot | undefined): LastVerdict | null {
  const verdict = last && edition.lot(last.id).verdicts[0]
  const criterion = verdict && edition.criteria.get(verdict.criterion)
  if (last === undefined || verdict === undefined || criterion === undefined) return null
  return {
    id: last.id,
    number: last.number,
    sampled: last.sampled,
    standing: standingOf(edition, last),
    set: setOfVerdict(verdict, criterion),
    trial: verdict.trial,
    reasons: sentencesOfVerdict(edition, verdict).slice(0, REASONS),
  }
}

function trendOf(
  edition: Edition,
  source: SourceEntry,
  series: Series,
  criteria: readonly Criterion[],
): TrendChartView {
  const { record } = source
  const input = {
    title: seriesTitle(series, (id) => conditionTitle(edition, id)),
    unit: series.unit,
    decimals: series.decimals,
    of: 'lot',
    ...trendContext(series, criteria, { class: record.class ?? null, kind: record.kind }),
    points: series.points.map(({ precedingMean, ...point }) =>
      precedingMean === undefined ? point : { ...point, mean: precedingMean },
    ),
    events: trendEvents(source),
    // Only an index spreads over decades; a share of the mass is read from an even axis.
    axis: property(series.property).nature === 'index' ? 'by-spread' : 'linear',
  } as const
  return trendChartView(inUnits(input, edition.site.units))
}
