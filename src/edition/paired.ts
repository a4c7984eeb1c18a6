/** Both routes side by side: lots with a strength and a resistivity index at one condition and age, and what they meet. */
import { compareWithLimit } from '../core/compare.ts'
import type { Comparison, Criterion, MaterialKind } from '../core/criterion.ts'
import { representative } from '../core/history.ts'
import { heldLimits } from '../core/judge-limits.ts'
import { limitWords, listWords } from '../core/limit-words.ts'
import type { Result } from '../core/result.ts'
import type { Quantity } from '../core/units.ts'
import type { Edition, LotEntry, SourceEntry } from './edition.ts'
import { bound } from './print.ts'
import { comparisonsFor } from './trends.ts'

const ROUTES = { strength: 'strength-activity-index', resistivity: 'resistivity-index' } as const
export type Route = keyof typeof ROUTES
/** Fewer lots show nothing beside each other. */
const AT_LEAST = 3
const INERT: readonly MaterialKind[] = ['limestone-filler', 'quartz-filler']

export interface PairedPoint {
  readonly lot: string
  readonly number: string
  readonly source: string
  readonly name: string
  readonly kind: MaterialKind
  readonly strength: number
  readonly resistivity: number
}

/** A lower limit of one route, with the sets that set it and the sources that it is set for. */
export interface RouteLimit {
  readonly value: number
  readonly operator: 'at-least' | 'above'
  readonly quantity: Quantity
  readonly resolution?: Comparison['resolution']
  /** "at least 70 %". */
  readonly words: string
  readonly sets: readonly { readonly id: string; readonly name: string }[]
  readonly sources: readonly string[]
}

export type Quadrant = 'both' | 'strength' | 'resistivity' | 'neither'
export const QUADRANT_WORDS: Readonly<Record<Quadrant, string>> = { both: 'meets both', strength: 'meets strength alone', resistivity: 'meets resistivity alone', neither: 'meets neither' }

export interface SourceCounts {
  readonly source: string
  readonly name: string
  readonly inert: boolean
  readonly lots: number
  readonly quadrants: Readonly<Record<Quadrant, number>>
}

export interface RoutePair { readonly strength: RouteLimit; readonly resistivity: RouteLimit }

export interface PairedGroup {
  readonly condition: string
  readonly age: string
  /** In the order of the sources, then of sampling. */
  readonly points: readonly PairedPoint[]
  readonly limits: Readonly<Record<Route, readonly RouteLimit[]>>
  /** The two limits that lots are counted by; missing where a route has none, or several and no set sets one for each route. */
  readonly pair?: RoutePair
  /** Sources that have points here, in the edition's order; without a pair, all counts are nought. */
  readonly sources: readonly SourceCounts[]
}

export function isInert(kind: MaterialKind): boolean {
  return INERT.includes(kind)
}

/** A group for each condition and age at which at least three lots have both indices; those that can be counted first. */
export function pairedGroups(edition: Pick<Edition, 'sources' | 'criteria'>): PairedGroup[] {
  const places = new Map<string, { condition: string; age: string; points: PairedPoint[] }>()
  for (const source of edition.sources.values()) {
    for (const lot of source.lots) {
      for (const { condition, age, ...values } of pairsOf(lot)) {
        const key = `${condition}|${age}`
        const place = places.get(key) ?? { condition, age, points: [] }
        places.set(key, place)
        place.points.push({ lot: lot.id, number: lot.number, source: source.id, name: source.record.name, kind: source.record.kind, ...values })
      }
    }
  }
  const groups = [...places.values()].filter(({ points }) => AT_LEAST <= points.length).map((place) => groupOf(edition, place))
  return groups.sort((a, b) => Number(a.pair === undefined) - Number(b.pair === undefined) || a.condition.localeCompare(b.condition, 'en') || Number.parseFloat(a.age) - Number.parseFloat(b.age))
}

interface LotPair { readonly condition: string; readonly age: string; readonly strength: number; readonly resistivity: number }

/** A withdrawn lot has none; where a value stands twice, the one that stands for the lot in every history. */
function pairsOf(lot: Pick<LotEntry, 'results' | 'withdrawn'>): LotPair[] {
  if (lot.withdrawn !== undefined) return []
  const strengths = lot.results.filter((result) => counts(result, 'strength'))
  const places = new Map(strengths.map(({ condition = '', age = '' }) => [`${condition}|${age}`, { condition, age }]))
  return [...places.values()].flatMap((place) => {
    const at = (route: Route) => representative(lot.results.filter((result) => counts(result, route) && result.condition === place.condition && result.age === place.age))?.value
    const [strength, resistivity] = [at('strength'), at('resistivity')]
    return strength === undefined || resistivity === undefined ? [] : [{ ...place, strength, resistivity }]
  })
}

/** Above zero, since a logarithmic axis has no place for less. */
function counts(result: Result, route: Route): boolean {
  return result.property === ROUTES[route] && result.role === 'producer' && result.valid && result.censored === undefined && 0 < result.value && result.condition !== undefined && result.age !== undefined
}

function groupOf(edition: Pick<Edition, 'sources' | 'criteria'>, place: { condition: string; age: string; points: readonly PairedPoint[] }): PairedGroup {
  const sources = [...edition.sources.values()].filter((source) => place.points.some((point) => point.source === source.id))
  const limitsOf = (route: Route) => routeLimits(sources, edition.criteria, { property: ROUTES[route], condition: place.condition, age: place.age })
  const limits = { strength: limitsOf('strength'), resistivity: limitsOf('resistivity') }
  const pair = routePair(limits)
  return { ...place, limits, ...(pair === undefined ? {} : { pair }), sources: sources.map((source) => sourceCounts(source, place.points, pair)) }
}

interface Sought { readonly property: Comparison['property']; readonly condition: string; readonly age: string }

/** Equal limits of several sets or sources are one. */
function routeLimits(sources: readonly SourceEntry[], criteria: Edition['criteria'], sought: Sought): RouteLimit[] {
  const limits = new Map<string, RouteLimit>()
  for (const source of sources) {
    for (const criterion of source.criteria.map((id) => criteria.get(id)).filter((known) => known !== undefined)) {
      for (const limit of limitsFor(criterion, source, sought)) {
        const key = `${limit.words}|${limit.resolution ?? ''}`
        const known = limits.get(key)
        limits.set(key, known === undefined ? limit : { ...known, sets: joined(known.sets, limit.sets, ({ id }) => id), sources: joined(known.sources, limit.sources, (id) => id) })
      }
    }
  }
  return [...limits.values()]
}

function joined<T>(known: readonly T[], more: readonly T[], key: (item: T) => string): T[] {
  return [...known, ...more.filter((item) => !known.some((other) => key(other) === key(item)))]
}

function limitsFor(criterion: Criterion, source: SourceEntry, sought: Sought): RouteLimit[] {
  const scope = { class: source.record.class ?? null, kind: source.record.kind }
  return comparisonsFor(criterion.clauses, scope)
    .filter((clause) => clause.property === sought.property && clause.condition === sought.condition && clause.age === sought.age && clause.deviation === undefined && clause.statistic === undefined)
    .flatMap((clause) => heldLimits(clause.limits, scope.class).flatMap(({ operator, quantities: [quantity] }) => ((operator === 'at-least' || operator === 'above') && quantity !== undefined
      ? [{ value: quantity.value, operator, quantity, ...(clause.resolution === undefined ? {} : { resolution: clause.resolution }), words: bound(limitWords(operator, [quantity])), sets: [{ id: criterion.id, name: setName(criterion) }], sources: [source.id] }]
      : [])))
}

function setName({ designation, title, edition }: Criterion): string {
  return designation === undefined ? title : `${designation}, ${edition}`
}


/** Of the first set that sets one limit for each route; else the only limits there are. */
function routePair({ strength, resistivity }: Readonly<Record<Route, readonly RouteLimit[]>>): RoutePair | undefined {
  const inSet = (limits: readonly RouteLimit[], id: string) => limits.filter(({ sets }) => sets.some((set) => set.id === id))
  const pairs = [...strength.flatMap(({ sets }) => sets.map(({ id }) => [inSet(strength, id), inSet(resistivity, id)] as const)), [strength, resistivity] as const]
  const found = pairs.find(([s, r]) => s.length === 1 && r.length === 1)
  return found?.[0][0] === undefined || found[1][0] === undefined ? undefined : { strength: found[0][0], resistivity: found[1][0] }
}

/** A value on the limit meets "at least"; it is rounded to the limit's digits first, as in a judgement without a decision rule. */
export function quadrantOf(point: Pick<PairedPoint, Route>, pair: RoutePair): Quadrant {
  const meets = (route: Route) => compareWithLimit({ value: point[route] }, pair[route].operator, [pair[route].quantity], pair[route].resolution).answer === 'met'
  const [strength, resistivity] = [meets('strength'), meets('resistivity')]
  return strength ? (resistivity ? 'both' : 'strength') : resistivity ? 'resistivity' : 'neither'
}

function sourceCounts(source: SourceEntry, points: readonly PairedPoint[], pair: RoutePair | undefined): SourceCounts {
  const own = points.filter((point) => point.source === source.id)
  const quadrants = { both: 0, strength: 0, resistivity: 0, neither: 0 }
  if (pair !== undefined) for (const point of own) quadrants[quadrantOf(point, pair)] += 1
  return { source: source.id, name: source.record.name, inert: isInert(source.record.kind), lots: own.length, quadrants }
}

/** What the counts show of a source, in a sentence; null where lots pass by both routes or neither and not all alike. */
export function patternSentence({ name, inert, lots, quadrants }: SourceCounts): string | null {
  const called = inert ? `the inert reference ${name}` : name
  if (lots === 0) return null
  if (quadrants.both === lots) return `Every lot of ${called} meets both routes.`
  if (quadrants.neither === lots) return `No lot of ${called} meets either route.`
  const alone = (['strength', 'resistivity'] as const).filter((route) => 0 < quadrants[route])
  if (alone.length === 0) return null
  return `Of ${lots} lots of ${called}, ${listWords(alone.map((route) => `${quadrants[route]} ${quadrants[route] === 1 ? 'passes' : 'pass'} by ${route} alone`), 'and')}.`
}
