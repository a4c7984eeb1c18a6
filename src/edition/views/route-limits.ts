/** The limits of both routes, strength and resistivity, and what a lot meets of them. */
import { comparisonsFor } from '../../core/criteria/comparisons-for.ts'
import { type Age, isSameAge } from '../../core/measure/age.ts'
import type { MaterialKind } from '../../core/measure/material-kind.ts'
import { compareWithLimit } from '../../core/judging/compare-with-limit.ts'
import { type Comparison, type Criterion, setName } from '../../core/criteria/criterion.ts'
import { limitsForClass, statedLimit } from '../../core/criteria/limits-for-class.ts'
import { limitWords } from '../../words/limits.ts'
import type { Quantity } from '../../core/measure/units.ts'
import { unbroken } from '../../words/sentences.ts'

export const ROUTES = { strength: 'strength-activity-index', resistivity: 'resistivity-index' } as const
export type Route = keyof typeof ROUTES

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
export type RouteLimits = Readonly<Record<Route, readonly RouteLimit[]>>
export interface RoutePair {
  readonly strength: RouteLimit
  readonly resistivity: RouteLimit
}

export type Quadrant = 'both' | 'strength' | 'resistivity' | 'neither'
export const QUADRANT_WORDS: Readonly<Record<Quadrant, string>> = {
  both: 'meets both limits',
  strength: 'meets the strength limit only',
  resistivity: 'meets the resistivity limit only',
  neither: 'meets neither limit',
}

/** Whom limits are sought for: a source, or a lot of it. */
export interface RouteSubject {
  readonly source: string
  readonly kind: MaterialKind
  readonly class: string | null
  readonly criteria: readonly string[]
}

/** Equal limits of several sets or subjects are one. */
export function routeLimits(
  subjects: readonly RouteSubject[],
  criteria: ReadonlyMap<string, Criterion>,
  { condition, age }: { condition: string; age: Age },
): RouteLimits {
  const ofRoute = (route: Route) => {
    const limits = new Map<string, RouteLimit>()
    for (const subject of subjects) {
      for (const criterion of subject.criteria
        .map((id) => criteria.get(id))
        .filter((known) => known !== undefined)) {
        for (const limit of limitsFor(criterion, subject, { property: ROUTES[route], condition, age })) {
          const key = `${limit.words}|${limit.resolution ?? ''}`
          const known = limits.get(key)
          limits.set(
            key,
            known === undefined
              ? limit
              : {
                  ...known,
                  sets: joined(known.sets, limit.sets, ({ id }) => id),
                  sources: joined(known.sources, limit.sources, (id) => id),
                },
          )
        }
      }
    }
    return [...limits.values()]
  }
  return { strength: ofRoute('strength'), resistivity: ofRoute('resistivity') }
}

function joined<T>(known: readonly T[], more: readonly T[], key: (item: T) => string): T[] {
  return [...known, ...more.filter((item) => !known.some((other) => key(other) === key(item)))]
}

function limitsFor(
  criterion: Criterion,
  subject: RouteSubject,
  sought: { property: Comparison['property']; condition: string; age: Age },
): RouteLimit[] {
  return comparisonsFor(criterion.clauses, subject)
    .filter(
      (clause) =>
        clause.property === sought.property &&
        clause.condition === sought.condition &&
        isSameAge(clause.age, sought.age) &&
        clause.deviation === undefined &&
        clause.statistic === undefined,
    )
    .flatMap((clause) =>
      limitsForClass(clause.limits, subject.class).flatMap(({ operator, quantities: [quantity] }) =>
        (operator === 'at-least' || operator === 'above') && quantity !== undefined
          ? [
              {
                value: quantity.value,
                operator,
                quantity,
                ...(clause.resolution === undefined ? {} : { resolution: clause.resolution }),
                words: unbroken(limitWords(statedLimit({ operator, quantities: [quantity] }))),
                sets: [{ id: criterion.id, name: setName(criterion) }],
                sources: [subject.source],
              },
            ]
          : [],
      ),
    )
}

/**
 * Of the first set that sets one limit for each route; else the only limits there are; undefined where there
 * are none or several.
 */
export function routePair({ strength, resistivity }: RouteLimits): RoutePair | undefined {
  const inSet = (limits: readonly RouteLimit[], id: string) =>
    limits.filter(({ sets }) => sets.some((set) => set.id === id))
  const pairs = [
    ...strength.flatMap(({ sets }) =>
      sets.map(({ id }) => [inSet(strength, id), inSet(resistivity, id)] as const),
    ),
    [strength, resistivity] as const,
  ]
  const found = pairs.find(([s, r]) => s.length === 1 && r.length === 1)
  return found?.[0][0] === undefined || found[1][0] === undefined
    ? undefined
    : { strength: found[0][0], resistivity: found[1][0] }
}

/**
 * A value on the limit meets "at least"; it is rounded to the limit's digits first, as in a judgement without
 * a decision rule.
 */
export function quadrantOf(point: Readonly<Record<Route, number>>, pair: RoutePair): Quadrant {
  const meets = (route: Route) =>
    compareWithLimit(
      { value: point[route] },
      pair[route].operator,
      [pair[route].quantity],
      pair[route].resolution,
    ).answer === 'met'
  const [strength, resistivity] = [meets('strength'), meets('resistivity')]
  return strength ? (resistivity ? 'both' : 'strength') : resistivity ? 'resistivity' : 'neither'
}
