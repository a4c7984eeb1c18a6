/** A source's charts on one time axis: what governs first, then the control mortar, then the rest. */
import { type PropertyKey, property } from '../../core/measure/properties.ts'
import { toSignificant } from '../../core/measure/rounding.ts'
import { RATIO_OF } from '../../core/measure/ratio-indices.ts'
import type { AxisTick } from '../../charts/panel-axis.ts'
import { panelModel, type PanelModel, type PanelPoint } from '../../charts/panel.ts'
import type { Criterion } from '../../core/criteria/criterion.ts'
import { fixedDigits, number } from '../../words/numbers.ts'
import { unbroken } from '../../words/sentences.ts'
import { newestLotsWords, thinnedWords } from '../../words/source-strip.ts'
import { unitSign } from '../../words/unit-signs.ts'
import { printedUnit } from '../../words/unit-systems.ts'
import { conditionTitle } from '../shape/condition-title.ts'
import type { Edition, Series, SourceEntry } from '../shape/edition.ts'
import { controlPanel } from './source-control-panel.ts'
import { type OwnLimit, ownLimits } from './source-limits.ts'
import { laboratoriesOf, seriesKey, type SourceLot } from './source-lots.ts'
import { dateAxis, type AxisKind, type SourceAxis } from './source-axis.ts'
import type { ChartTable } from './chart-table.ts'
import { chartedPoints, type ChartedPoint, panelPoints, pointsTable } from './source-panel-points.ts'
import { type Rail, railOf } from './source-rail.ts'
import { trendContext, type TrendContext } from './trends.ts'

export interface PanelView {
  readonly id: string
  readonly title: string
  /** Condition and whatever else tells the panel from others. */
  readonly note: string
  /** For those who do not see it. */
  readonly description: string
  readonly model: PanelModel
  readonly tickLabels: readonly string[]
  readonly table: ChartTable
}

export interface SourceCharts {
  readonly axis: AxisKind
  readonly rail: Rail
  readonly ticks: readonly AxisTick[]
  readonly panels: readonly PanelView[]
  /** Folded in. */
  readonly more: readonly PanelView[]
  /** Names of those, the condition beside a name that comes again. */
  readonly moreNames: readonly string[]
  /** Laboratories in order of appearance, each with its shape. */
  readonly laboratories: readonly { readonly name: string; readonly shape: 'round' | 'square' }[]
  /** That only the newest lots are drawn, of a very long history; null where all are. */
  readonly newest: string | null
  /** What was left out of drawings; null where nothing was. */
  readonly thinned: string | null
}

/** What panels are drawn from. */
export interface PanelContext {
  readonly edition: Edition
  readonly source: SourceEntry
  readonly lots: readonly SourceLot[]
  /** Criteria in force, the governing one first. */
  readonly criteria: readonly Criterion[]
  readonly axis: SourceAxis
  readonly laboratories: readonly string[]
}

/** Properties that stand open after what governs, in this order. */
const OPEN: readonly PropertyKey[] = [
  'loss-on-ignition',
  'residue-45um',
  'water-requirement',
  'CaO',
  'density',
]
const TALL = 150
const LOW = 104

/** Lots that a page of charts has room for. */
const DRAWN_LOTS = 2000

export interface ChartsOf {
  readonly edition: Edition
  readonly source: SourceEntry
  /** Of the period, in order of sampling. */
  readonly lots: readonly SourceLot[]
  /** Key of the series that governs; null where none does. */
  readonly governing: string | null
}

/** null without a lot. */
export function sourceCharts(
  of: ChartsOf,
  axisOf: (lots: readonly SourceLot[]) => SourceAxis = (lots) => dateAxis(lots, of.edition.asOf.day),
): SourceCharts | null {
  if (of.lots.length === 0) return null
  const lots = of.lots.slice(-DRAWN_LOTS)
  const context = contextOf({ ...of, lots }, axisOf)
  const { edition } = of
  const { open, folded } = orderedSeries(of)
  const drawn = open.flatMap((series, place) => panelWithControl(context, series, place))
  const panels = drawn.filter((panel) => panel !== null)
  return {
    axis: context.axis.kind,
    rail: railOf(context),
    ticks: context.axis.ticks,
    panels,
    more: folded.flatMap((series) => seriesPanel(context, series, LOW) ?? []),
    moreNames: namesOf(edition, folded),
    laboratories: laboratoryShapes(context),
    newest: newestLotsWords(lots.length, of.lots.length),
    thinned:
      panels.map(({ model }) => thinnedWords(model.drawn, model.of)).find((words) => words !== null) ?? null,
  }
}

export function contextOf(
  { edition, source, lots }: ChartsOf,
  axisOf: (lots: readonly SourceLot[]) => SourceAxis,
): PanelContext {
  return {
    edition,
    source,
    lots,
    criteria: source.criteria.flatMap((id) => edition.criteria.get(id) ?? []),
    axis: axisOf(lots),
    laboratories: laboratoriesOf(lots),
  }
}

/** Series in the order of the page: those that stand open, and those that are folded in. */
export function orderedSeries({ source, governing }: Pick<ChartsOf, 'source' | 'governing'>): {
  readonly open: readonly Series[]
  readonly folded: readonly Series[]
} {
  const ordered = governingFirst(source.series, governing)
  const open = ordered.filter(isOpen(ordered[0]))
  return { open, folded: ordered.filter((series) => !open.includes(series)) }
}

/** Each once; the condition tells those of one name apart. */
export function namesOf(edition: Edition, series: readonly Series[]): string[] {
  const title = (own: Series) => [property(own.property).title, own.age?.text].filter(Boolean).join(', ')
  return series.map((own) => {
    const isAlone = series.filter((other) => title(other) === title(own)).length === 1
    return unbroken(
      isAlone || own.condition === undefined
        ? title(own)
        : `${title(own)} (${conditionTitle(edition, own.condition)})`,
    )
  })
}

function laboratoryShapes({ laboratories, edition }: PanelContext): SourceCharts['laboratories'] {
  return laboratories.map((id, place) => ({
    name: edition.laboratories.get(id)?.name ?? id,
    shape: place % 2 === 0 ? 'round' : 'square',
  }))
}

/** The series that governs, the other ages of the same test, then the others as the page lists them. */
function governingFirst(series: readonly Series[], governing: string | null): Series[] {
  const head = series.find((own) => seriesKey(own) === governing) ?? series[0]
  const rank = (own: Series) => {
    if (own === head) return 0
    if (own.property === head?.property && own.condition === head.condition) return 1
    const place = OPEN.indexOf(own.property)
    return place < 0 ? OPEN.length + 2 : place + 2
  }
  return [...series].sort((a, b) => rank(a) - rank(b))
}

function isOpen(head: Series | undefined) {
  return (own: Series) =>
    OPEN.includes(own.property) || (own.property === head?.property && own.condition === head.condition)
}

function panelWithControl(context: PanelContext, series: Series, place: number): (PanelView | null)[] {
  const panel = seriesPanel(context, series, place === 0 ? TALL : LOW)
  return place === 0 && RATIO_OF[series.property] !== undefined
    ? [panel, controlPanel(context, series, LOW)]
    : [panel]
}

/** null where no result of the period has a value. */
export function seriesPanel(context: PanelContext, series: Series, height: number): PanelView | null {
  const { edition, source, criteria } = context
  const scope = { class: source.record.class ?? null, kind: source.record.kind }
  const [governing] = criteria
  const limits = governing === undefined ? [] : ownLimits(governing, series, scope)
  const all = trendContext(series, criteria, scope)
  const unit = printedUnit(series.unit, series.decimals, edition.site.units)
  const charted = chartedPoints(context, series, limits)
  const points = panelPoints(context, series, { points: charted, band: all.band })
  const newest = points.findLast(({ status, value }) => status === 'valid' && value !== null)?.value ?? null
  const model = panelModel({
    points: points.map((point) => inUnit(point, unit.of)),
    limits: limits.map(({ value, label }) => ({ value: unit.of(value), label })),
    ...(all.band === undefined ? {} : { band: bandIn(all.band, unit.of) }),
    last: newest === null ? null : `${number(unit.of(newest), unit.decimals, edition.site.units)} last`,
    height,
    joined: true,
  })
  if (model === null) return null
  return {
    id: `chart-${seriesKey(series).replaceAll('|', '-')}`,
    title: unbroken([property(series.property).title, series.age?.text].filter(Boolean).join(', ')),
    note: noteOf(context, series, { limits, all }),
    description: descriptionOf(charted, limits, unit.decimals),
    model,
    tickLabels: tickLabels(model, unit.unit),
    table: pointsTable(context, series, charted),
  }
}

function bandIn(band: NonNullable<TrendContext['band']>, of: (value: number) => number) {
  return band.relative ? band : { ...band, half: of(band.half) - of(0) }
}

function inUnit({ value, mean, ...point }: PanelPoint, of: (value: number) => number): PanelPoint {
  return {
    ...point,
    value: value === null ? null : of(value),
    ...(mean === undefined ? {} : { mean: of(mean) }),
  }
}

function noteOf(
  { edition, criteria }: PanelContext,
  series: Series,
  { limits, all }: { limits: readonly OwnLimit[]; all: TrendContext },
): string {
  const condition = series.condition === undefined ? [] : [conditionTitle(edition, series.condition)]
  const band =
    all.band === undefined
      ? []
      : [
          `band: mean of the preceding ten, of fewer at first, ± ${fixedDigits(all.band.half, 0)} ${all.band.relative ? '%' : unitSign(series.unit === '%' ? 'points' : series.unit)}`,
        ]
  const others = all.limits.filter(({ value }) => !limits.some((own) => own.value === value))
  const also = others.map(({ label, sets }) => `${label}: ${sets.join('; ')}`)
  const of = all.band === undefined ? '' : ' on the value itself'
  const none =
    limits.length === 0 && criteria.length > 0 ? [`no limit${of} in the governing specification`] : []
  return unbroken([...condition, ...band, ...none, ...also].join('. '))
}

function descriptionOf(
  points: readonly ChartedPoint[],
  limits: readonly OwnLimit[],
  decimals: number,
): string {
  const valid = points.flatMap(({ point: { status, value } }) =>
    status === 'valid' && value !== null ? [value] : [],
  )
  const outside = points.filter((point) => point.outside).length
  const ends = [
    valid.reduce((a, b) => Math.min(a, b), Infinity),
    valid.reduce((a, b) => Math.max(a, b), -Infinity),
  ]
  const range =
    valid.length === 0 ? '' : ` from ${ends.map((end) => fixedDigits(end, decimals)).join(' to ')}`
  const words = limits.map(({ label }) => label).join(', ')
  return `${valid.length} valid results${range}${limits.length === 0 ? '' : `, limit ${words}, ${outside} outside it`}`
}

/** Only the uppermost carries the unit. */
export function tickLabels({ ticks }: Pick<PanelModel, 'ticks'>, unit: string): string[] {
  const digits = Math.max(
    0,
    ...ticks.map(({ value }) => (String(toSignificant(value, 6)).split('.')[1] ?? '').length),
  )
  return ticks.map(
    ({ value }, place) =>
      `${number(value, digits)}${place === ticks.length - 1 && unit !== '' ? ` ${unitSign(unit)}` : ''}`,
  )
}
