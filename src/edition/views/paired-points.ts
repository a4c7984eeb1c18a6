/**
 * Lots that have a strength and a resistivity index at one condition and age, gathered once for an edition.
 */
import { bisector } from 'd3'
import { type Age, isSameAge } from '../../core/measure/age.ts'
import type { MaterialKind } from '../../core/measure/material-kind.ts'
import { representative } from '../../core/history/representative.ts'
import { compareMoments, dateOf, type Moment, isBy } from '../../core/measure/moment.ts'
import { isBounded } from '../../core/result/bounds.ts'
import type { Result } from '../../core/result/result.ts'
import type { Edition, ListedSource, LotEntry } from '../shape/edition.ts'
import { onceTraced } from '../shape/trace.ts'
import { type Route, ROUTES } from './route-limits.ts'
import { partOfSource } from '../shape/part-of-source.ts'

const INERT: readonly MaterialKind[] = ['limestone-filler', 'quartz-filler']

export interface PairedPoint {
  /** SOURCE/LOT and printed number. */
  readonly lot: string
  readonly number: string
  /** Day on which the later of the two was read. */
  readonly tested: Moment
  /** Per cent, both above zero. */
  readonly strength: number
  readonly resistivity: number
}

export interface PairedSource {
  readonly id: string
  readonly name: string
  readonly kind: MaterialKind
  /** A filler that is known not to react. */
  readonly inert: boolean
  /** In order of the day tested. */
  readonly points: readonly PairedPoint[]
}

export interface PairedPlace {
  readonly condition: string
  readonly age: Age
  /** Sources with points, in the edition's order. */
  readonly sources: readonly PairedSource[]
}

/** What the points are gathered from. */
export type PairedLots = Pick<Edition, 'sources' | 'lotsOf' | 'lot' | 'ofSource'>

/** Gathered once for an edition, which `lotsOf` stands for: each has its own. */
const kept = new WeakMap<Edition['lotsOf'], () => readonly PairedPlace[]>()

/** Every condition and age at which a lot has both indices. */
export function pairedPlaces(edition: PairedLots): readonly PairedPlace[] {
  const places = kept.get(edition.lotsOf) ?? onceTraced('paired points', () => placesOf(edition))
  kept.set(edition.lotsOf, places)
  return places()
}

function placesOf(edition: PairedLots): readonly PairedPlace[] {
  const places = new Map<string, PairedPlace & { sources: PairedSource[] }>()
  for (const source of edition.sources.values()) {
    const pairs = ownPairs(edition, source.id)
    for (const [key, own] of Map.groupBy(pairs, ({ condition, age }) => `${condition}|${age.hours}`)) {
      const [{ condition, age }] = own as [LotPair]
      const place = places.get(key) ?? { condition, age, sources: [] }
      places.set(key, place)
      place.sources.push(pairedSource(source, own))
    }
  }
  return [...places.values()]
}

const ownPairs = partOfSource('pairs', (edition: PairedLots, source) =>
  edition.lotsOf(source).flatMap(({ id }) => pairsOf(edition.lot(id))),
)

function pairedSource({ id, name, kind }: ListedSource, pairs: readonly LotPair[]): PairedSource {
  return {
    id,
    name,
    kind,
    inert: INERT.includes(kind),
    points: pairs.map(({ point }) => point).sort(byTested),
  }
}

/** Order of the day tested, then of the lot's id. */
function byTested(a: PairedPoint, b: PairedPoint): number {
  return compareMoments(a.tested, b.tested) || (a.lot < b.lot ? -1 : 1)
}

/** In order of the day tested. The page of every lot asks, so nothing is sorted of which most is left out. */
export function newestPoints(sources: readonly PairedSource[], most: number): PairedPoint[] {
  const left = sources.map(({ points }) => points.slice(-most))
  const found: PairedPoint[] = []
  while (found.length < most) {
    const newest = withNewest(left)?.pop()
    if (newest === undefined) break
    found.push(newest)
  }
  return found.reverse()
}

/** Of lists in order of the day tested the one that ends last; undefined where all are empty. */
function withNewest(lists: readonly PairedPoint[][]): PairedPoint[] | undefined {
  let last: PairedPoint | undefined
  let found: PairedPoint[] | undefined
  for (const list of lists) {
    const own = list.at(-1)
    if (own === undefined || (last !== undefined && byTested(own, last) < 0)) continue
    last = own
    found = list
  }
  return found
}

const byDay = bisector(({ tested }: PairedPoint) => tested.day)

/** The last points of a source that were tested before a day. */
export function before(source: PairedSource, day: number, most: number): PairedSource {
  const end = byDay.left(source.points, day)
  return { ...source, points: source.points.slice(Math.max(0, end - most), end) }
}

interface LotPair {
  readonly condition: string
  readonly age: Age
  readonly point: PairedPoint
}

/**
 * A lot's points; a withdrawn lot has none; where a value stands twice, the one that stands for the lot in
 * every history.
 */
export function pairsOf(lot: Pick<LotEntry, 'id' | 'number' | 'results' | 'withdrawn'>): LotPair[] {
  if (lot.withdrawn !== undefined) return []
  const strengths = lot.results.filter((result) => counts(result, 'strength'))
  const places = new Map(
    strengths.flatMap(({ condition, age }) =>
      condition === undefined || age === undefined ? [] : [[`${condition}|${age.hours}`, { condition, age }]],
    ),
  )
  return [...places.values()].flatMap((place) => {
    const at = (route: Route) =>
      representative(
        lot.results.filter(
          (result) =>
            counts(result, route) && result.condition === place.condition && isSameAge(result.age, place.age),
        ),
      )
    const [strength, resistivity] = [at('strength'), at('resistivity')]
    if (strength === undefined || resistivity === undefined) return []
    return [
      {
        ...place,
        point: {
          lot: lot.id,
          number: lot.number,
          tested: dateOf(isBy(strength.tested, resistivity.tested) ? resistivity.tested : strength.tested),
          strength: strength.value,
          resistivity: resistivity.value,
        },
      },
    ]
  })
}

/** Above zero, since a logarithmic axis has no place for less. */
function counts(result: Result, route: Route): boolean {
  return (
    result.property === ROUTES[route] &&
    result.role === 'producer' &&
    result.valid &&
    !isBounded(result) &&
    0 < result.value &&
    result.condition !== undefined &&
    result.age !== undefined
  )
}
