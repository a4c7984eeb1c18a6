/** Results with the days on which they stood as they are. */
import { isBy, momentOfDay, type Moment } from '../measure/moment.ts'
import { knownSince, type Result } from './result.ts'

/** A result that stood so on every day from one to the day before another, since 1970-01-01. */
export interface Observation {
  readonly result: Result
  readonly from: number
  /** Absent for what stands at the as-of date. */
  readonly until?: number
}

/** Results that stand at the as-of date, and where any of them changed before it, all that ever stood. */
export interface Observed {
  readonly results: readonly Result[]
  /** Left out where nothing changed: each result then stands from the day it became known. */
  readonly observations?: readonly Observation[]
}

/** Everything that ever stood, in the order in which the results were computed. */
export function observationsOf({ results, observations }: Observed): readonly Observation[] {
  return observations ?? results.map((result) => ({ result, from: knownSince(result).day }))
}

/**
 * The results that stood on a date.
 * @param asOf calendar date
 */
export function resultsOn(observed: Observed, asOf: Moment): Result[] {
  if (observed.observations === undefined)
    return observed.results.filter((result) => isBy(knownSince(result), asOf))
  return observed.observations.filter((one) => standsOn(one, asOf.day)).map(({ result }) => result)
}

/**
 * Whether something stood on a day.
 * @param day since 1970-01-01
 */
export function standsOn({ from, until = Number.POSITIVE_INFINITY }: Span, day: number): boolean {
  return from <= day && day < until
}

/** Days from one to the day before another, since 1970-01-01; without an end for good. */
export interface Span {
  readonly from: number
  readonly until?: number | undefined
}

/**
 * Everything that ever stood, of results that changed on some days.
 * @param days on which something known before may have changed, since 1970-01-01, in order
 * @param resultsAt results known on a date, which is that of the day before a change
 * @param results that stand at the as-of date
 * @returns undefined where nothing changed after all
 */
export function observedOver(
  days: readonly number[],
  resultsAt: (date: Moment) => readonly Result[],
  results: readonly Result[],
): Observation[] | undefined {
  if (days.length === 0) return undefined
  const standing = new Map<string, Observation>()
  const ended: Observation[] = []
  let begin = Number.NEGATIVE_INFINITY
  for (const day of days) {
    stand(standing, ended, resultsAt(momentOfDay(day - 1)), begin)
    begin = day
  }
  stand(standing, ended, results, begin)
  return ended.length === 0 ? undefined : [...ended, ...standing.values()]
}

/** What no longer stands on a day ends there; what did not stand before begins, once it is known. */
function stand(
  standing: Map<string, Observation>,
  ended: Observation[],
  results: readonly Result[],
  begin: number,
): void {
  const now = byIdentity(results)
  for (const [identity, observation] of standing)
    if (!now.has(identity)) {
      standing.delete(identity)
      ended.push({ ...observation, until: begin })
    }
  for (const [identity, result] of now) {
    const from = standing.get(identity)?.from ?? Math.max(begin, knownSince(result).day)
    standing.set(identity, { result, from })
  }
}

/** Results by what history asks of them; of those that are alike each by its number. */
function byIdentity(results: readonly Result[]): Map<string, Result> {
  const alike = Map.groupBy(results, ({ role, key, tested, value, valid }) =>
    [role, key, tested.text, value, valid].join('|'),
  )
  return new Map(
    [...alike].flatMap(([identity, same]) =>
      same.map((result, place) => [`${identity}|${place}`, result] as const),
    ),
  )
}
