/** Results of the newest lots over their shipments: a hundred trucks of one lot are one result. */
import { type StepLot, shipmentSteps, type StepsModel } from '../../charts/shipment-steps.ts'
import type { AxisTick } from '../../charts/panel-axis.ts'
import { property } from '../../core/measure/properties.ts'
import { shippedReading, trucksWords } from '../../words/chart-readings.ts'
import { shortDate } from '../../words/dates.ts'
import { plural } from '../../words/numbers.ts'
import { unbroken } from '../../words/sentences.ts'
import { printedUnit } from '../../words/unit-systems.ts'
import { conditionTitle } from '../shape/condition-title.ts'
import type { Series } from '../shape/edition.ts'
import { type ChartTable, newestTable, numberHead, textHead } from './chart-table.ts'
import { shipmentAxis } from './source-axis.ts'
import { type OwnLimit, ownLimits } from './source-limits.ts'
import { seriesKey, type SourceLot } from './source-lots.ts'
import { type ChartedPoint, chartedPoints, figuresOf } from './source-panel-points.ts'
import {
  type ChartsOf,
  contextOf,
  namesOf,
  orderedSeries,
  type PanelContext,
  tickLabels,
} from './source-panels.ts'
import { type Rail, railOf } from './source-rail.ts'
import { isFailed } from './source-strip.ts'

export interface ShippedPanel {
  readonly id: string
  readonly title: string
  readonly note: string
  readonly description: string
  readonly model: StepsModel
  readonly tickLabels: readonly string[]
  readonly table: ChartTable
}

export interface ShippedCharts {
  readonly rail: Rail
  readonly ticks: readonly AxisTick[]
  readonly panels: readonly ShippedPanel[]
  /** Folded in. */
  readonly more: readonly ShippedPanel[]
  readonly moreNames: readonly string[]
  /** How many shipments are drawn of how many: "All 40 shipments of single lots." */
  readonly drawn: string
}

/** Trucks that a drawing has room for. */
const TRUCKS = 260
const TALL = 170
const LOW = 110

/** Every series of a source over its shipments; null where nothing was shipped or nothing measured. */
export function shippedCharts(of: ChartsOf): ShippedCharts | null {
  const { open, folded } = orderedSeries(of)
  const lots = newestShipped(of.lots)
  if (lots.length === 0) return null
  const context = contextOf({ ...of, lots }, shipmentAxis)
  const panels = open.flatMap(
    (series, place) => shippedPanel(context, series, place === 0 ? TALL : LOW) ?? [],
  )
  if (panels.length === 0) return null
  return {
    rail: railOf(context),
    ticks: context.axis.ticks,
    panels,
    more: folded.flatMap((series) => shippedPanel(context, series, LOW) ?? []),
    moreNames: namesOf(of.edition, folded),
    drawn: trucksWords(trucksOf(lots), trucksOf(of.lots)),
  }
}

/** The series that governs alone, at its latest age: what a certificate waits for longest. */
export function governingShipped(of: ChartsOf): ShippedCharts | null {
  const { source, governing } = of
  const head = source.series.find((own) => seriesKey(own) === governing)
  const series = source.series.findLast(
    (own) => own.property === head?.property && own.condition === head.condition,
  )
  if (series === undefined) return null
  return shippedCharts({ ...of, source: { ...source, series: [series] }, governing: seriesKey(series) })
}

function trucksOf(lots: readonly SourceLot[]): number {
  return lots.reduce((sum, { shipments }) => sum + shipments.length, 0)
}

/** The newest lots that have shipments, as far as there is room for their trucks. */
function newestShipped(lots: readonly SourceLot[]): SourceLot[] {
  const found: SourceLot[] = []
  let trucks = 0
  for (const lot of lots.filter(({ shipments }) => 0 < shipments.length).reverse()) {
    trucks += lot.shipments.length
    if (TRUCKS < trucks && 0 < found.length) break
    found.unshift(lot)
  }
  return found
}

function shippedPanel(context: PanelContext, series: Series, height: number): ShippedPanel | null {
  const { edition, source, criteria } = context
  const scope = { class: source.record.class ?? null, kind: source.record.kind }
  const [set] = criteria
  const limits = set === undefined ? [] : ownLimits(set, series, scope)
  const unit = printedUnit(series.unit, series.decimals, edition.site.units)
  const charted = chartedPoints(context, series, limits)
  const steps = charted.map((point) => stepOf(context, series, point, unit.of))
  const model = shipmentSteps({ lots: steps, limits: inUnit(limits, unit.of), height })
  if (model === null) return null
  return {
    id: `shipped-${seriesKey(series).replaceAll('|', '-')}`,
    title: unbroken([property(series.property).title, series.age?.text].filter(Boolean).join(', ')),
    note: series.condition === undefined ? '' : unbroken(conditionTitle(edition, series.condition)),
    description: `${plural(charted.length, 'lot', 'lots')}, ${plural(trucksOf(charted.map(({ lot }) => lot)), 'shipment', 'shipments')}, ${model.before.length} of them left before the result was known`,
    model,
    tickLabels: tickLabels(model, unit.unit),
    table: shippedTable(context, series, charted),
  }
}

function inUnit(limits: readonly OwnLimit[], of: (value: number) => number) {
  return limits.map(({ value, label }) => ({ value: of(value), label }))
}

/** Trucks in order of leaving: whether the result was known on the day. */
function knownTrucks(lot: SourceLot, series: Series): boolean[] {
  const known = lot.origins.get(seriesKey(series))?.knownDay ?? Number.POSITIVE_INFINITY
  return lot.shipments.map(({ date }) => known <= date.day)
}

function stepOf(
  context: PanelContext,
  series: Series,
  { lot, point, outside, alone }: ChartedPoint,
  of: (value: number) => number,
): StepLot {
  const { value, status } = point
  const counts = status === 'valid' && value !== null
  const before = context.axis.before(lot)
  return {
    value: counts ? of(value) : null,
    outside: outside && counts,
    alone,
    failed: isFailed(lot),
    words: shippedReading(lotShipped(context, series, { lot, point, outside, alone })),
    from: before,
    to: 2 * context.axis.of(lot) - before,
    trucks: knownTrucks(lot, series),
  }
}

type LotShipped = Parameters<typeof shippedReading>[0]

function lotShipped(
  { edition }: PanelContext,
  series: Series,
  { lot, point: { value, status }, outside }: ChartedPoint,
): LotShipped {
  const trucks = knownTrucks(lot, series)
  return {
    of: lot.row.number,
    value: value === null ? null : figuresOf(series, edition.site.units)(value),
    status,
    outside: outside && status === 'valid',
    trucks: trucks.length,
    before: trucks.filter((known) => !known).length,
    failed: isFailed(lot),
  }
}

function shippedTable(context: PanelContext, series: Series, charted: readonly ChartedPoint[]): ChartTable {
  return newestTable(charted, {
    heads: [
      textHead('Lot'),
      numberHead('Result'),
      numberHead('Shipments'),
      numberHead('Left before it was known'),
      textHead('First and last day'),
    ],
    row: (point) => {
      const { shipments, row } = point.lot
      const { of, value, trucks, before } = lotShipped(context, series, point)
      const days = [shipments[0], shipments.at(-1)].flatMap((own) => (own ? [shortDate(own.date)] : []))
      return {
        lot: row.id,
        cells: [of, value ?? '', String(trucks), String(before), [...new Set(days)].join(' to ')],
      }
    },
  })
}
