/** How much of what a source produces its tests cover. */
import { dutyOf, type Duty } from '../measure/duty.ts'
import { daysBetween, hoursBetween, isBy, type Moment } from '../measure/moment.ts'
import { observationsOf, type Span, standsOn } from '../result/observation.ts'
import type { Result } from '../result/result.ts'
import { firstAtOrAfter } from '../statistics/first-at-or-after.ts'
import type { Coverage } from './coverage.ts'
import { firstLot, type History, placeOf, type TestedPlace } from './history.ts'

/** Tests of one property, at any condition and age; of one kind of sample where it is named. */
export interface Covering {
  readonly property: string
  readonly sample?: 'grab' | 'composite' | undefined
  /** On samples of this duty alone. */
  readonly duty?: Duty | undefined
}

/**
 * What was produced since the test before.
 * @param lot its id
 * @param asOf calendar date; tests begun later do not count, those under way do
 * @throws RangeError for a lot that the history does not hold
 * Notes: 1. a mortar counts from the day it was cast, an analysis from that of its result; 2. where a clock
 * time is missing, whole days stand for the time between.
 */
export function coverageOf(history: History, lot: string, asOf: Moment, covering: Covering): Coverage {
  const place = history.place.get(lot)
  const own = place === undefined ? undefined : history.lots[place]
  if (place === undefined || own === undefined)
    throw new RangeError(`coverageOf needs a lot of this history, got ${lot}`)
  const tested = testedPlaces(history, covering)
  const next = firstAtOrAfter(tested, placeOf, place)
  const before = lastBegun(tested, next, asOf)
  const tests = tested[next]?.place === place ? tested[next].samples.filter(countsOn(asOf)).length : 0
  const earlier = before === undefined ? undefined : history.lots[before.place]
  const begin = earlier?.sampled ?? firstLot(history, asOf)?.from ?? own.from
  return {
    ...(earlier === undefined ? {} : { since: earlier.id }),
    hours: hoursBetween(begin, own.sampled) ?? 24 * daysBetween(begin, own.sampled),
    tonnes:
      (history.produced[place] ?? 0) -
      (before === undefined ? 0 : (history.produced[before.place] ?? 0)) -
      tonnesAfter(history, asOf, place, before?.place ?? -1),
    tests,
  }
}

/**
 * Mass of the lots between two places that were sampled after the date, as their own clocks have it: east and
 * west of each other a lot may come before another and yet be of a later day.
 */
function tonnesAfter({ lots }: History, asOf: Moment, place: number, before: number): number {
  let tonnes = 0
  // No offset moves a moment by more than a day.
  for (let index = place - 1; before < index; index -= 1) {
    const lot = lots[index]
    if (lot === undefined || lot.sampled.day < asOf.day - 1) break
    if (!isBy(lot.sampled, asOf)) tonnes += lot.tonnes
  }
  return tonnes
}

function countsOn(asOf: Moment): (sample: readonly Span[]) => boolean {
  return (sample) => sample.some((span) => standsOn(span, asOf.day))
}

/** The last place before another with a test that was begun by the date. */
function lastBegun(tested: readonly TestedPlace[], end: number, asOf: Moment): TestedPlace | undefined {
  const counts = countsOn(asOf)
  for (let index = end - 1; 0 <= index; index -= 1)
    if (tested[index]?.samples.some(counts) === true) return tested[index]
  return undefined
}

function testedPlaces(history: History, { property, sample, duty }: Covering): readonly TestedPlace[] {
  const key = `${property}|${sample ?? ''}|${duty ?? ''}`
  const known = history.tested.get(key)
  if (known !== undefined) return known
  const counts = (test: Pick<Result, 'property' | 'sampleKind' | 'duty'>) =>
    test.property === property &&
    (sample === undefined || test.sampleKind === sample) &&
    (duty === undefined || dutyOf(test) === duty)
  const places = history.lots.flatMap((lot, place) => {
    const results = observationsOf(lot)
      .filter(({ result }) => result.role === 'producer' && counts(result))
      .map(({ result, from, until }) => ({
        sample: result.sample,
        // A mortar is under way from its casting, whatever becomes of its results.
        ...(result.begun === undefined ? { from, until } : { from: result.begun.day }),
      }))
    const others = [...(lot.unmade ?? []), ...(lot.planned ?? [])]
      .filter(counts)
      .map(({ sample, begun }) => ({ sample, from: begun.day }))
    const samples = [...Map.groupBy([...results, ...others], (test) => test.sample).values()]
    return samples.length === 0 ? [] : [{ place, samples }]
  })
  history.tested.set(key, places)
  return places
}
