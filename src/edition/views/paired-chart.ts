/** A picture of both routes with its legend in words and the table behind it. */
import { compareMoments } from '../../core/measure/moment.ts'
import { pairedMark } from '../../charts/paired-marks.ts'
import { type PairedInput, pairedModel, type PairedModel } from '../../charts/paired.ts'
import { number, plural } from '../../words/numbers.ts'
import { writtenText } from '../../words/units.ts'
import type { PairedView, SeriesRole, ViewSeries } from './paired.ts'
import { type Quadrant, quadrantOf, type Route, type RouteLimit, type RouteLimits } from './route-limits.ts'

/** A page has a wide column; a lot's picture is small everywhere. */
export type PictureRoom = 'page' | 'lot'

export interface PairedChartView {
  readonly title: string
  readonly description: string
  /** One for each width of column; none where there is nothing to draw. */
  readonly drawings: readonly PairedDrawing[]
  /** In the order of the drawings' series. */
  readonly marks: readonly LegendMark[]
  /** "strength at least 75 %: names of the sets". */
  readonly limits: readonly string[]
  /** Of the table. */
  readonly summary: string
  /** The newest first, as many as a page has room for. */
  readonly rows: readonly PairedRow[]
  /** Whether rows say what they meet. */
  readonly meetsColumn: boolean
}

export interface PairedDrawing {
  readonly size: 'wide' | 'narrow' | 'only'
  readonly model: PairedModel
  /** Labels of the ticks, in their order. */
  readonly xTicks: readonly string[]
  readonly yTicks: readonly string[]
}

export interface LegendMark {
  /** Classes of the mark's path. */
  readonly class: string
  /** Path of the mark in a box of 22 × 14, and the letter beside it. */
  readonly path: string
  readonly letter: string
  /** Mark and series in words. */
  readonly words: string
  readonly name: string
}

export interface PairedRow {
  readonly lot: string
  readonly number: string
  readonly mark: string
  readonly of: string
  readonly strength: string
  readonly resistivity: string
  readonly meets: string
}

/** Rows of the table; the file has all. */
const NEWEST = 200

const ROLE_WORDS: Readonly<Record<SeriesRole, string>> = {
  source: '',
  inert: ', inert reference',
  beside: ', for comparison',
  subject: '',
}

export function pairedChartView(
  view: PairedView,
  { title, room }: { title: string; room: PictureRoom },
): PairedChartView {
  const drawings = drawingsOf(view, room)
  const marks = view.series.map((own, place) => legendMark(own, place, drawings[0]?.model ?? null))
  const rows = rowsOf(view, marks)
  return {
    title,
    description: description(view),
    drawings,
    marks,
    limits: limitLines(view.limits).map(([route, limit]) => `${route} ${limit.words}: ${namesOf(limit)}`),
    summary:
      NEWEST < rows.length
        ? `Table of the newest ${NEWEST} of ${rows.length} lots`
        : `Table of ${plural(rows.length, 'lot', 'lots')}`,
    rows: rows.slice(0, NEWEST),
    meetsColumn: view.pair !== undefined,
  }
}

/** Letters shrink with the drawing, so a page has one for a wide column and one for a phone, as for trends. */
function drawingsOf(view: PairedView, room: PictureRoom): PairedDrawing[] {
  const phone = input(view, firstSet)
  if (room === 'lot') return drawing('only', { ...phone, width: 400, height: 300 })
  return [
    ...drawing('wide', { ...input(view, everySet), width: 860, height: 440 }),
    ...drawing('narrow', { ...phone, width: 320, height: 350 }),
  ]
}

function drawing(size: PairedDrawing['size'], of: PairedInput): PairedDrawing[] {
  const model = pairedModel(of)
  if (model === null) return []
  const labels = (ticks: readonly { readonly value: number }[]) => ticks.map(({ value }) => number(value, 0))
  return [{ size, model, xTicks: labels(model.xTicks), yTicks: labels(model.yTicks) }]
}

function input(
  { series, limits, pair }: PairedView,
  label: (limit: RouteLimit) => string,
): Omit<PairedInput, 'width' | 'height'> {
  const labelled = (limit: RouteLimit) => ({ value: limit.value, label: label(limit) })
  return {
    series: series.map(({ name, role, points }) => ({
      name,
      role,
      points: points.map(({ strength, resistivity }) => ({ x: strength, y: resistivity })),
    })),
    limits: { x: limits.strength.map(labelled), y: limits.resistivity.map(labelled) },
    ...(pair === undefined ? {} : { quadrants: { x: pair.strength.value, y: pair.resistivity.value } }),
  }
}

/** A phone has room for the first set's name alone; the legend names every one. */
function firstSet({ quantity, sets }: RouteLimit): string {
  return `${writtenText(quantity.written)}, ${sets[0]?.name ?? ''}`
}

function everySet(limit: RouteLimit): string {
  const more = limit.sets.length - 1
  return `${firstSet(limit)}${more < 1 ? '' : ` and ${more} more`}`
}

function limitLines({ strength, resistivity }: RouteLimits): (readonly [Route, RouteLimit])[] {
  return [
    ...strength.map((limit) => ['strength', limit] as const),
    ...resistivity.map((limit) => ['resistivity', limit] as const),
  ]
}

function namesOf({ sets }: RouteLimit): string {
  return sets.map(({ name }) => name).join('; ')
}

function legendMark({ name, role }: ViewSeries, place: number, model: PairedModel | null): LegendMark {
  const { word, letter, draw } = pairedMark(place)
  const tone = role === 'source' ? `pair-tone-${model?.series[place]?.tone ?? 0}` : `pair-${role}`
  return {
    class: `pair ${tone}`,
    path: draw(9, 7, 1),
    letter,
    words: [role === 'inert' ? 'open' : '', word, letter].filter((part) => part !== '').join(' '),
    name: `${name}${ROLE_WORDS[role]}`,
  }
}

function description({ series, limits }: PairedView): string {
  const points = series.flatMap((own) => own.points)
  const strength = range(
    points.map((point) => point.strength),
    1,
  )
  const resistivity = range(
    points.map((point) => point.resistivity),
    0,
  )
  const lines = limitLines(limits).map(
    ([route, limit]) => `Limit of the ${route} index: ${limit.words}, ${namesOf(limit)}.`,
  )
  return [
    `${plural(points.length, 'lot', 'lots')}: strength activity index ${strength}, resistivity index ${resistivity}.`,
    ...lines,
    'The words and the table beside it give the same in numbers.',
  ].join(' ')
}

function range(values: readonly number[], decimals: number): string {
  const [least, most] = [values.reduce((a, b) => Math.min(a, b)), values.reduce((a, b) => Math.max(a, b))]
  return `${number(least, decimals)} to ${number(most, decimals)} %`
}

/** In a column headed "Meets". */
const MEETS: Readonly<Record<Quadrant, string>> = {
  both: 'both',
  strength: 'strength only',
  resistivity: 'resistivity only',
  neither: 'neither',
}

/** Series that only stand beside are not listed. */
function rowsOf({ series, pair }: PairedView, marks: readonly LegendMark[]): PairedRow[] {
  return series
    .flatMap((own, place) =>
      own.role === 'beside' ? [] : own.points.map((point) => ({ point, mark: marks[place] })),
    )
    .sort(({ point: a }, { point: b }) => compareMoments(b.tested, a.tested) || (a.lot < b.lot ? -1 : 1))
    .map(({ point, mark }) => ({
      lot: point.lot,
      number: point.number,
      mark: mark?.words ?? '',
      of: mark?.name ?? '',
      strength: number(point.strength, 1),
      resistivity: number(point.resistivity, 0),
      meets: pair === undefined ? '' : MEETS[quadrantOf(point, pair)],
    }))
}
