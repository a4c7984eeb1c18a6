/** A picture of both routes with its legend in words and the table behind it. */
import { compareMoments } from '../../core/measure/moment.ts'
import { pairedMark } from '../../charts/paired-marks.ts'
import { type PairedInput, pairedModel, type PairedModel } from '../../charts/paired.ts'
import { withoutCovered } from '../../charts/paired-thinning.ts'
import { number, plural } from '../../words/numbers.ts'
import { writtenText } from '../../words/units.ts'
import type { PairedPoint } from './paired-points.ts'
import type { PairedView, SeriesRole, ViewSeries } from './paired.ts'
import { type Quadrant, quadrantOf, type Route, type RouteLimit, type RouteLimits } from './route-limits.ts'

/** A page has a wide column; a lot's picture is small everywhere. */
export type PictureRoom = 'page' | 'lot'

export interface PairedChartView {
  readonly title: string
  readonly description: string
  /** What a script reads out at each mark, the weakest first. */
  readonly readings: readonly string[]
  /** One for each width of column; none where there is nothing to draw. */
  readonly drawings: readonly PairedDrawing[]
  /** In the order of the drawings' series. */
  readonly marks: readonly LegendMark[]
  /** "strength at least 75 %: names of the sets". */
  readonly limits: readonly string[]
  /** How many lots are drawn of how many; null where all are. */
  readonly thinned: string | null
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
  /** Middles of the marks in the order of the readings, for a script: "12.3,45.6 78,90". */
  readonly places: string
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
  const drawn = { ...view, series: view.series.map(drawnOf) }
  const drawings = drawingsOf(drawn, room)
  const marks = view.series.map((own, place) => legendMark(own, place, drawings[0]?.model ?? null))
  const rows = rowsOf(view, marks)
  return {
    title,
    description: description(view),
    drawings,
    readings: readOrder(drawn).map(({ name, point }) => readingWords(name, point, view)),
    marks,
    limits: limitLines(view.limits).map(([route, limit]) => `${route} ${limit.words}: ${namesOf(limit)}`),
    thinned: thinnedWords(countOf(drawn), countOf(view)),
    summary:
      NEWEST < rows.length
        ? `Table of the newest ${NEWEST} of ${rows.length} lots`
        : `Table of ${plural(rows.length, 'lot', 'lots')}`,
    rows: rows.slice(0, NEWEST),
    meetsColumn: view.pair !== undefined,
  }
}

function drawnOf(series: ViewSeries): ViewSeries {
  return { ...series, points: withoutCovered(series.points) }
}

function countOf({ series }: Pick<PairedView, 'series'>): number {
  return series.reduce((sum, { points }) => sum + points.length, 0)
}

function thinnedWords(drawn: number, of: number): string | null {
  return drawn === of
    ? null
    : `${number(drawn, 0)} of ${number(of, 0)} lots are drawn: of marks that would cover one another, the newest.`
}

/** Letters shrink with the drawing, so a page has one for a wide column and one for a phone, as for trends. */
function drawingsOf(view: PairedView, room: PictureRoom): PairedDrawing[] {
  const own = input(view)
  const order = readOrder(view)
  if (room === 'lot') return drawing('only', { ...own, width: 350, height: 300 }, order)
  return [
    ...drawing('wide', { ...own, width: 860, height: 440 }, order),
    ...drawing('narrow', { ...own, width: 320, height: 350 }, order),
  ]
}

function drawing(
  size: PairedDrawing['size'],
  of: PairedInput,
  order: ReturnType<typeof readOrder>,
): PairedDrawing[] {
  const model = pairedModel(of)
  if (model === null) return []
  const labels = (ticks: readonly { readonly value: number }[]) => ticks.map(({ value }) => number(value, 0))
  return [
    {
      size,
      model,
      xTicks: labels(model.xTicks),
      yTicks: labels(model.yTicks),
      places: order.map(({ at: [place, index] }) => model.middles[place]?.[index]?.join(',') ?? '').join(' '),
    },
  ]
}

function input({ series, limits, pair }: PairedView): Omit<PairedInput, 'width' | 'height'> {
  const labelled = (limit: RouteLimit) => ({ value: limit.value, label: limitFigure(limit) })
  return {
    series: series.map(({ name, role, mark, points }) => ({
      name,
      role,
      mark,
      points: points.map(({ strength, resistivity }) => ({ x: strength, y: resistivity })),
    })),
    limits: { x: limits.strength.map(labelled), y: limits.resistivity.map(labelled) },
    ...(pair === undefined ? {} : { quadrants: { x: pair.strength.value, y: pair.resistivity.value } }),
  }
}

/** The value alone stands beside its line; the legend names the sets. */
function limitFigure({ quantity }: RouteLimit): string {
  return writtenText(quantity.written)
}

/** Every point of every series, the weakest first, so that an arrow key goes across the drawing. */
function readOrder({ series }: Pick<PairedView, 'series'>): {
  readonly name: string
  readonly point: PairedPoint
  readonly at: readonly [number, number]
}[] {
  return series
    .flatMap(({ name, points }, place) =>
      points.map((point, index) => ({ name, point, at: [place, index] as const })),
    )
    .sort((a, b) => a.point.strength - b.point.strength || a.point.resistivity - b.point.resistivity)
}

function readingWords(name: string, point: PairedPoint, { pair }: PairedView): string {
  const figures = `strength index ${number(point.strength, 1)} %, resistivity index ${number(point.resistivity, 0)} %`
  const meets = pair === undefined ? '' : `; meets ${MEETS[quadrantOf(point, pair)]}`
  return `${point.number}, ${name}: ${figures}${meets}`
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

/** How a role changes the look of a mark. */
const MARK_WORDS: Readonly<Record<SeriesRole, string>> = {
  source: '',
  inert: 'open',
  beside: 'small open',
  subject: 'large',
}

function legendMark(
  { name, role, mark, points, newestOf }: ViewSeries,
  place: number,
  model: PairedModel | null,
): LegendMark {
  const { word, letter, draw } = pairedMark(mark)
  const tone = role === 'source' ? `pair-tone-${model?.series[place]?.tone ?? 0}` : `pair-${role}`
  return {
    class: `pair ${tone}`,
    path: draw(9, 7, 1),
    letter,
    words: [MARK_WORDS[role], word, letter].filter((part) => part !== '').join(' '),
    name: `${name}${ROLE_WORDS[role]}${newestOf === undefined ? '' : `, the newest ${number(points.length, 0)} of ${number(newestOf, 0)} lots`}`,
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
