/** A laboratory's control mortar on one time axis: what the governing specification asks for first, ages in order of time. */
import { acrossOf, type AxisTick, axisTicks, type DayAxis } from '../../charts/panel-axis.ts'
import { panelModel, type PanelLevel, type PanelPoint } from '../../charts/panel.ts'
import { type BatchStanding, batchStandings } from '../../core/checks/control-batches.ts'
import { everyClause } from '../../core/criteria/criterion.ts'
import type {
  ControlBatchSeries,
  ControlOrigin,
  ControlPoint,
} from '../../core/history/laboratory-history.ts'
import { compareAges, isSameAge } from '../../core/measure/age.ts'
import { property } from '../../core/measure/properties.ts'
import { chartedState, offWords, resultReading } from '../../words/chart-readings.ts'
import { shortDate } from '../../words/dates.ts'
import { number, plural } from '../../words/numbers.ts'
import { resultReasonIn } from '../../words/result-reasons.ts'
import { unbroken } from '../../words/sentences.ts'
import { type PrintedUnit, printedUnit } from '../../words/unit-systems.ts'
import { conditionTitle } from '../shape/condition-title.ts'
import type { Edition } from '../shape/edition.ts'
import { newestTable, numberHead, textHead } from './chart-table.ts'
import { batchesOf, cementChanges } from './control-series.ts'
import { figuresOf } from './source-panel-points.ts'
import { type PanelView, tickLabels } from './source-panels.ts'
import { placed, type Rail, railRows } from './source-rail.ts'

export interface LaboratoryCharts {
  readonly rail: Rail
  readonly ticks: readonly AxisTick[]
  readonly panels: readonly PanelView[]
  /** Folded in. */
  readonly more: readonly PanelView[]
}

/** Panels that stand open. */
const OPEN = 6
const HEIGHT = 118

/** null without a batch that has a value. */
export function laboratoryCharts(edition: Edition, id: string): LaboratoryCharts | null {
  const batches = batchesOf(edition.controls, id)
  const [first] = batches
  if (first === undefined) return null
  const axis = { from: first.record.cast.day, to: edition.asOf.day }
  const standings = batchStandings(batches)
  const panels = ordered(edition, edition.laboratoryHistory(id).series).flatMap(
    (series) => seriesPanel({ edition, axis, standings }, series) ?? [],
  )
  return {
    rail: railOf(edition, id, { axis, standings }),
    ticks: axisTicks(axis),
    panels: panels.slice(0, OPEN),
    more: panels.slice(OPEN),
  }
}

interface From {
  readonly edition: Edition
  readonly axis: DayAxis
  readonly standings: ReadonlyMap<string, readonly BatchStanding[]>
}

/** Conditions in the order in which criteria name them, the governing one first; strength before resistivity. */
function ordered({ criteria, site }: Edition, series: readonly ControlBatchSeries[]): ControlBatchSeries[] {
  const named = [
    ...new Set(
      site.criteria.flatMap((id) =>
        [...everyClause(criteria.get(id)?.clauses ?? [])].flatMap((clause) =>
          'condition' in clause && clause.condition !== undefined ? [clause.condition] : [],
        ),
      ),
    ),
  ]
  const rank = ({ condition }: ControlBatchSeries) => {
    const place = named.indexOf(condition)
    return place < 0 ? named.length : place
  }
  return [...series].sort(
    (a, b) =>
      rank(a) - rank(b) ||
      a.condition.localeCompare(b.condition, 'en') ||
      b.property.localeCompare(a.property, 'en') ||
      compareAges(a.age, b.age),
  )
}

type Named = ControlPoint & { readonly named: ControlOrigin }

function seriesPanel(from: From, series: ControlBatchSeries): PanelView | null {
  const { edition } = from
  const printed = printedUnit(series.unit, series.decimals, edition.site.units)
  // A batch that is not shown has no day to stand at.
  const points = series.points.filter((point): point is Named => point.named !== null)
  const newest = points.findLast(({ status }) => status === 'valid')
  const model = panelModel({
    points: points.map((point) => panelPoint(from, series, point, printed)),
    limits: [],
    last: newest === undefined ? null : `${number(printed.of(newest.value), printed.decimals)} last`,
    levels: levelsOf(from.axis, series, printed),
    height: HEIGHT,
    joined: false,
  })
  if (model === null) return null
  const title = `${property(series.property).title}, ${series.age.text}`
  return {
    id: `control-${series.key.replaceAll(/[^A-Za-z0-9-]/g, '-')}`,
    title: unbroken(title),
    note: unbroken(noteOf(from, series, points)),
    description: `${plural(points.length, 'control batch', 'control batches')}, ${conditionTitle(edition, series.condition)}`,
    model,
    tickLabels: tickLabels(model, printed.unit),
    table: tableOf(from, series, points),
  }
}

/** Mean and limits of each stretch that has enough batches, from its first batch to its last. */
function levelsOf(
  axis: DayAxis,
  { points, segments }: ControlBatchSeries,
  { of }: PrintedUnit,
): PanelLevel[] {
  const dayAt = (place: number | undefined) =>
    points.find((point) => point.place === place)?.named?.cast.day ?? null
  return segments.flatMap(({ places, chart }) => {
    const [from, to] = [dayAt(places[0]), dayAt(places.at(-1))]
    if (!chart.shown || from === null || to === null) return []
    const { centre, low, high } = chart
    return [
      {
        from: acrossOf(axis, from),
        to: acrossOf(axis, to),
        centre: of(centre),
        low: of(low),
        high: of(high),
      },
    ]
  })
}

function farOf({ standings }: From, { property: key, age }: ControlBatchSeries, { named }: Named) {
  return standings
    .get(named.batch)
    ?.find(({ result, isFar }) => isFar && result.property === key && isSameAge(result.age, age))
}

function panelPoint(from: From, series: ControlBatchSeries, point: Named, { of }: PrintedUnit): PanelPoint {
  const { named, value, status } = point
  const far = farOf(from, series, point)
  return {
    x: acrossOf(from.axis, named.cast.day),
    value: of(value),
    status,
    outside: false,
    breaks: false,
    shape: 0,
    ...(far === undefined ? {} : { off: true }),
    words: resultReading({
      of: named.batch,
      at: named.cast,
      value: figuresOf(series, from.edition.site.units)(value),
      status,
      outside: false,
      remarks: remarksOf(from, series, point),
    }),
  }
}

function remarksOf(from: From, series: ControlBatchSeries, point: Named): string[] {
  const { named, fromEarlierPercent } = point
  const far = farOf(from, series, point)
  const [reason] = named.reasons
  return [
    ...(reason === undefined ? [] : [resultReasonIn(reason, from.edition.site.units)]),
    ...(far !== undefined
      ? [offWords(far.percent)]
      : fromEarlierPercent === null
        ? []
        : [`${number(fromEarlierPercent, 1)} % from the batches before it`]),
    `cement ${named.cement}`,
  ]
}

function noteOf(from: From, series: ControlBatchSeries, points: readonly Named[]): string {
  const off = points.flatMap((point) => {
    const far = farOf(from, series, point)
    return far === undefined ? [] : [`${point.named.batch}: ${offWords(far.percent)}`]
  })
  return [conditionTitle(from.edition, series.condition), ...off].join('. ')
}

function tableOf(from: From, series: ControlBatchSeries, points: readonly Named[]): PanelView['table'] {
  const figure = figuresOf(series, from.edition.site.units)
  return newestTable(points, {
    heads: [textHead('Batch'), textHead('Cast'), numberHead('Value'), textHead('State'), textHead('Remark')],
    row: (point) => ({
      lot: null,
      cells: [
        point.named.batch,
        shortDate(point.named.cast),
        figure(point.value),
        chartedState(point.status),
        remarksOf(from, series, point).join('; '),
      ],
    }),
  })
}

/** New lots of control cement across all panels, and the names of batches that are far off. */
function railOf(edition: Edition, id: string, { axis, standings }: Omit<From, 'edition'>): Rail {
  const batches = batchesOf(edition.controls, id)
  const off = batches.filter((batch) => standings.get(batch.id)?.some(({ isFar }) => isFar))
  const events = placed(
    off.map((batch) => ({ x: acrossOf(axis, batch.record.cast.day), width: 0, text: batch.id })),
  )
  const cements = placed(
    cementChanges(batches).map(({ from, cement }, place) => ({
      x: acrossOf(axis, from.day),
      first: place === 0,
      text: cement,
    })),
  )
  return {
    events,
    laboratories: [],
    cements,
    names: ['off', '', 'cement'],
    rows: railRows(events, [], cements),
    words: off.map(({ id: batch }) => `far off the batches before it: ${batch}`),
  }
}
