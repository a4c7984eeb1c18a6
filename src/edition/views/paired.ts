/**
 * Both routes side by side: what is drawn for all sources, for one source, and for one lot among those before
 * it.
 */
import { compareAges, type Age } from '../../core/measure/age.ts'
import { listWords } from '../../words/sentences.ts'
import type { Edition, LotEntry } from '../shape/edition.ts'
import { namedSource } from '../shape/named-source.ts'
import { asked } from '../shape/trace.ts'
import {
  before,
  newestPoints,
  type PairedLots,
  type PairedPlace,
  pairedPlaces,
  type PairedPoint,
  type PairedSource,
  pairsOf,
} from './paired-points.ts'
import {
  type Quadrant,
  quadrantOf,
  routeLimits,
  type RouteLimits,
  type RoutePair,
  routePair,
  type RouteSubject,
} from './route-limits.ts'

/**
 * A source of the view; an inert reference; other sources to compare with; the lot that the view is about.
 */
export type SeriesRole = 'source' | 'inert' | 'beside' | 'subject'

export interface ViewSeries {
  readonly name: string
  readonly role: SeriesRole
  /** Place of the source among all of the site, which gives it the same mark on every chart. */
  readonly mark: number
  readonly points: readonly PairedPoint[]
  /** Lots of the source with both indices, where only the newest are drawn. */
  readonly newestOf?: number
}

/** One picture: series in the order of drawing, the last one on top. */
export interface PairedView {
  readonly condition: string
  readonly age: Age
  readonly limits: RouteLimits
  /** The two limits that lots are counted by. */
  readonly pair?: RoutePair
  readonly series: readonly ViewSeries[]
}

export interface SourceCounts {
  readonly source: string
  readonly name: string
  readonly inert: boolean
  readonly lots: number
  /** All nought without a pair of limits. */
  readonly quadrants: Readonly<Record<Quadrant, number>>
}

/** A picture with the sources it counts. */
export interface PairedGroup extends PairedView {
  readonly counts: readonly SourceCounts[]
}

/** A picture of one lot. */
export interface PairedLot extends PairedView {
  readonly own: PairedPoint
  readonly quadrant?: Quadrant
}

type From = PairedLots & Pick<Edition, 'criteria'>

/** Fewer lots show nothing beside each other. */
const AT_LEAST = 3
/** Marks of sources that only stand beside. */
const BESIDE = { ofSource: 200, ofLot: 20 } as const
/** Lots of a source that are drawn: on a page of its own, and among all sources. */
const DRAWN = { ofSource: 1000, ofEach: 400 } as const
/** Marks around a lot: earlier lots of its source, and lots of each other source. */
const BEFORE = 10
const OF_EACH = 4

/**
 * A group for each condition and age at which at least three lots have both indices; those that can be
 * counted first.
 */
export function pairedGroups(edition: From): PairedGroup[] {
  const places = pairedPlaces(edition).filter(
    ({ sources }) => AT_LEAST <= sources.reduce((sum, { points }) => sum + points.length, 0),
  )
  return inOrder(
    places.map((place) => {
      const view = viewOf(
        place,
        edition,
        place.sources.flatMap(({ id }) => subjectsOf(edition, id)),
      )
      return {
        ...view,
        series: place.sources.map((source) => newest(seriesOf(edition, source), DRAWN.ofEach)),
        counts: place.sources.map((source) => countsOf(source, view.pair)),
      }
    }),
  )
}

/** The same for one source, among inert references and the newest lots of the others. */
export function pairedOfSource(edition: From, id: string): PairedGroup[] {
  return inOrder(
    pairedPlaces(edition).flatMap((place) => {
      const own = place.sources.find((source) => source.id === id)
      if (own === undefined || own.points.length < AT_LEAST) return []
      const view = viewOf(place, edition, subjectsOf(edition, id))
      const others = place.sources.filter((source) => source.id !== id)
      return [
        {
          ...view,
          series: [
            ...besideSeries(
              newestPoints(
                others.filter(({ inert }) => !inert),
                BESIDE.ofSource,
              ),
            ),
            ...inertSeries(edition, others, BESIDE.ofSource),
            newest(seriesOf(edition, own), DRAWN.ofSource),
          ],
          counts: [countsOf(own, view.pair)],
        },
      ]
    }),
  )
}

/**
 * A picture for each condition and age at which the lot has both indices, among lots tested on an earlier
 * day.
 */
export function pairedOfLot(
  edition: From,
  lot: Pick<LotEntry, 'id' | 'source' | 'class' | 'number' | 'results' | 'withdrawn' | 'verdicts'>,
): PairedLot[] {
  const kind = namedSource(edition, lot.source)?.kind
  if (kind === undefined) return []
  const subject: RouteSubject = {
    source: lot.source,
    kind,
    class: lot.class ?? null,
    criteria: lot.verdicts.map(({ criterion }) => criterion),
  }
  return inOrder(
    pairsOf(lot).flatMap(({ condition, age, point: own }) => {
      const around = pointsAround(edition, [condition, age.hours, lot.source, own.tested.day].join('|'))
      if (around === null) return []
      const { beside, inert, earlier } = around
      const view = viewOf({ condition, age }, edition, [subject])
      const series: ViewSeries[] = [
        ...besideSeries(beside),
        ...inert.map((source) => seriesOf(edition, source)),
        { ...seriesOf(edition, earlier), name: `earlier lots of ${earlier.name}` },
        { ...seriesOf(edition, earlier), name: `lot ${lot.number}`, role: 'subject', points: [own] },
      ]
      return [
        {
          ...view,
          series: series.filter(({ points }) => 0 < points.length),
          own,
          ...(view.pair === undefined ? {} : { quadrant: quadrantOf(own, view.pair) }),
        },
      ]
    }),
  )
}

/**
 * At a condition and age in hours, for a source and a day: its points before that day, and those of others. Of these no more
 * than is drawn, since each build asks for every lot whether the answer is the same.
 */
const pointsAround = asked('points-around', (edition: PairedLots, of): PointsAround | null => {
  const [condition, hours, id, day] = of.split('|')
  const place = pairedPlaces(edition).find(
    (candidate) => candidate.condition === condition && candidate.age.hours === Number(hours),
  )
  const source = place?.sources.find((candidate) => candidate.id === id)
  if (place === undefined || source === undefined) return null
  const ofOthers = (inert: boolean) =>
    place.sources
      .filter((other) => other !== source && other.inert === inert)
      .map((other) => before(other, Number(day), OF_EACH))
  return {
    earlier: before(source, Number(day), BEFORE),
    beside: newestPoints(ofOthers(false), BESIDE.ofLot),
    inert: ofOthers(true),
  }
})

interface PointsAround {
  readonly earlier: PairedSource
  /** Of sources that are no inert references. */
  readonly beside: readonly PairedPoint[]
  readonly inert: readonly PairedSource[]
}

function inOrder<View extends PairedView>(views: View[]): View[] {
  return views.sort(
    (a, b) =>
      Number(a.pair === undefined) - Number(b.pair === undefined) ||
      a.condition.localeCompare(b.condition, 'en') ||
      compareAges(a.age, b.age),
  )
}

function viewOf(
  { condition, age }: Pick<PairedPlace, 'condition' | 'age'>,
  { criteria }: From,
  subjects: readonly RouteSubject[],
): Omit<PairedView, 'series'> {
  const limits = routeLimits(subjects, criteria, { condition, age })
  const pair = routePair(limits)
  return { condition, age, limits, ...(pair === undefined ? {} : { pair }) }
}

function subjectsOf({ sources }: From, id: string): RouteSubject[] {
  const source = sources.get(id)
  return source === undefined
    ? []
    : [
        {
          source: id,
          kind: source.kind,
          class: source.class ?? null,
          criteria: source.criteria,
        },
      ]
}

function seriesOf({ sources }: From, { id, name, inert, points }: PairedSource): ViewSeries {
  return { name, role: inert ? 'inert' : 'source', mark: [...sources.keys()].indexOf(id), points }
}

/** The drawing stays readable, and the page bounded, however long the history. */
function newest(series: ViewSeries, most: number): ViewSeries {
  const { points } = series
  return points.length <= most ? series : { ...series, points: points.slice(-most), newestOf: points.length }
}

function inertSeries(edition: From, sources: readonly PairedSource[], most: number): ViewSeries[] {
  return sources
    .filter(({ inert }) => inert)
    .map((source) => ({ ...seriesOf(edition, source), points: source.points.slice(-most) }))
}

/** Reactive sources as one series. @param points their newest */
function besideSeries(points: readonly PairedPoint[]): ViewSeries[] {
  return points.length === 0 ? [] : [{ name: 'other sources', role: 'beside', mark: 0, points }]
}

function countsOf({ id, name, inert, points }: PairedSource, pair: RoutePair | undefined): SourceCounts {
  const quadrants = { both: 0, strength: 0, resistivity: 0, neither: 0 }
  if (pair !== undefined) for (const point of points) quadrants[quadrantOf(point, pair)] += 1
  return { source: id, name, inert, lots: points.length, quadrants }
}

/**
 * What the counts show of a source, in a sentence; null where lots pass by both routes or neither and not all
 * alike.
 */
export function patternSentence({ name, inert, lots, quadrants }: SourceCounts): string | null {
  const called = inert ? `the inert reference ${name}` : name
  if (lots === 0) return null
  if (quadrants.both === lots) return `Every lot of ${called} meets both limits.`
  if (quadrants.neither === lots) return `No lot of ${called} meets either limit.`
  const alone = (['strength', 'resistivity'] as const).filter((route) => 0 < quadrants[route])
  if (alone.length === 0) return null
  return `Of ${lots} lots of ${called}, ${listWords(
    alone.map(
      (route) => `${quadrants[route]} ${quadrants[route] === 1 ? 'meets' : 'meet'} the ${route} limit only`,
    ),
    'and',
  )}.`
}
