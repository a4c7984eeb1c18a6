/**
 * The results of one source in order of sampling, so that a lot can be judged against those before it. Built
 * once a source;
 * a query walks back from the lot's place and never looks at a later lot.
 */
import type { Coverage } from './coverage.ts'
import { firstAtOrAfter } from '../statistics/first-at-or-after.ts'
import type { Age } from '../measure/age.ts'
import { compareMoments, daysBetween, hoursBetween, isBy, type Moment } from '../measure/moment.ts'
import {
  byTest,
  knownSince,
  type PlannedTest,
  type PrecedingResult,
  type Result,
  type UnmadeResult,
} from '../result/result.ts'

/** What was known of a lot until some day, exclusive: what is known otherwise since. */
export interface EarlierResults {
  /** Days since 1970-01-01. */
  readonly until: number
  readonly results: readonly Result[]
}

/** What history needs of a lot. */
export interface HistoryLot {
  readonly id: string
  readonly sampled: Moment
  readonly class: string | null
  /** As known on the last day that the history can be asked for. */
  readonly results: readonly Result[]
  /** Tests without a value, and tests awaited, as known then. */
  readonly unmade?: readonly UnmadeResult[]
  readonly planned?: readonly PlannedTest[]
  /** Results as they were known before a day on which they changed, in order of the days. */
  readonly before?: readonly EarlierResults[]
  /** Mass produced, in tonnes, and the moment at which production began. */
  readonly tonnes: number
  readonly from: Moment
  /** Date of withdrawal. */
  readonly withdrawn?: Moment
}

/** What a lot contributes to one series. */
interface Entry {
  readonly place: number
  readonly lot: HistoryLot
  /** Of this series, as known today, and since when the last of them has been. */
  readonly results: readonly Result[]
  readonly knownDay: number
  readonly today: Standing | undefined
}

/** The result that stands for a lot in a series. */
interface Standing {
  readonly preceding: PrecedingResult
  readonly valid: boolean
}

/** A lot with tests, and the day on which each of them was begun, since 1970-01-01, in order. */
interface TestedPlace {
  readonly place: number
  readonly begun: readonly number[]
}

export interface History {
  /** Place of a lot in the order of sampling. */
  readonly place: ReadonlyMap<string, number>
  readonly entries: ReadonlyMap<string, readonly Entry[]>
  /** Places at which a series begins anew. */
  readonly restarts: readonly number[]
  readonly lots: readonly HistoryLot[]
  /** Mass produced up to and with each lot. */
  readonly produced: readonly number[]
  /** Places with a test, by property and kind of sample; filled when first asked for. */
  readonly tested: Map<string, readonly TestedPlace[]>
}

/**
 * The key under which a source's results form one series: results of another class or method are never
 * compared.
 * @param lotClass class that the lot claims; null where it claims none
 * @param property,condition,method as a result states them; undefined where it states none
 * @returns the parts with the age among them, joined by "|"; an empty part for what is missing
 */
export function historyKey(
  lotClass: string | null,
  property: string,
  condition?: string,
  age?: Age,
  method?: string,
): string {
  return [lotClass ?? '', property, condition ?? '', age?.text ?? '', method ?? ''].join('|')
}

/**
 * Order of sampling, then id by code unit.
 * @param a,b lots, with the end of sampling and the id
 * @returns negative where a comes first, else positive
 */
export function bySampling(a: { sampled: Moment; id: string }, b: { sampled: Moment; id: string }): number {
  return compareMoments(a.sampled, b.sampled) || (a.id < b.id ? -1 : 1)
}

/**
 * The one result that stands for the lot in its history: valid before not valid, a composite before a grab,
 * then the latest.
 * @returns undefined for no result
 */
export function representative(results: readonly Result[]): Result | undefined {
  let best: Result | undefined
  for (const result of results)
    if (
      best === undefined ||
      rank(result) > rank(best) ||
      (rank(result) === rank(best) && byTest(best, result) < 0)
    )
      best = result
  return best
}

function rank(result: Result): number {
  return (result.valid ? 2 : 0) + (result.sampleKind === 'composite' ? 1 : 0)
}

/**
 * The results of a lot as they were known on a date.
 * @param asOf calendar date, not after the day that the lot's results are of
 */
export function resultsOn({ results, before = [] }: HistoryLot, asOf: Moment): readonly Result[] {
  const then = before.find(({ until }) => asOf.day < until)?.results ?? results
  return then.filter((result) => isBy(knownSince(result), asOf))
}

/**
 * The history of one source.
 * @param lots in order of sampling (`bySampling`)
 * @param restartDates dates of the events that begin a series anew
 * Notes: 1. only the producer's results enter, the representative of each lot and key; 2. a censored result
 * is no number and never counts; 3. the first two valid results of one key in a lot are duplicates; 4. all
 * this is chosen for the date of a question.
 */
export function buildHistory(lots: readonly HistoryLot[], restartDates: readonly Moment[]): History {
  const entries = new Map<string, Entry[]>()
  lots.forEach((lot, place) => {
    for (const [key, results] of resultsByKey(lot)) {
      const entry = {
        place,
        lot,
        results,
        knownDay: Math.max(...results.map((result) => knownSince(result).day), lastChange(lot)),
        today: standing(lot, results),
      }
      const list = entries.get(key)
      if (list === undefined) entries.set(key, [entry])
      else list.push(entry)
    }
  })
  const restarts = restartDates
    .map((date) => lots.findIndex((lot) => isBy(date, lot.sampled)))
    .filter((place) => place >= 0)
    .sort((a, b) => a - b)
  let total = 0
  const produced = lots.map((lot) => {
    total += lot.tonnes
    return total
  })
  return {
    place: new Map(lots.map((lot, place) => [lot.id, place])),
    entries,
    restarts,
    lots,
    produced,
    tested: new Map(),
  }
}

/** The last day on which what is known of a lot changed rather than grew. */
function lastChange({ before }: HistoryLot): number {
  return before?.at(-1)?.until ?? Number.NEGATIVE_INFINITY
}

function standing(lot: HistoryLot, results: readonly Result[]): Standing | undefined {
  const result = representative(results)
  if (result === undefined) return undefined
  const { value, valid, censored } = result
  return {
    valid: valid && censored === undefined,
    preceding: { lot: lot.id, sampled: lot.sampled, value, ...duplicate(results) },
  }
}

/** Two valid results of one key in one lot are duplicates of each other. */
function duplicate(results: readonly Result[]): Pick<PrecedingResult, 'difference'> {
  const [first, second] = results
    .filter((result) => result.valid && result.censored === undefined)
    .sort(byTest)
  return first === undefined || second === undefined
    ? {}
    : { difference: Math.abs(first.value - second.value) }
}

function keyOf(lot: HistoryLot, { property, condition, age, method }: Result): string {
  return historyKey(lot.class, property, condition, age, method)
}

/** Today's results of each series; a series that has none any more is kept, for questions about the past. */
function resultsByKey(lot: HistoryLot): Map<string, Result[]> {
  const own = lot.results.filter((result) => result.role === 'producer')
  const byKey = Map.groupBy(own, (result) => keyOf(lot, result))
  for (const { results } of lot.before ?? [])
    for (const result of results)
      if (result.role === 'producer' && !byKey.has(keyOf(lot, result))) byKey.set(keyOf(lot, result), [])
  return byKey
}

/**
 * The most recent results before a lot, oldest first.
 * @param key of `historyKey`
 * @param lot its id; one that the history does not hold has none before it
 * @param asOf calendar date
 * @param count at most so many
 * Note: valid, not withdrawn by the as-of date, known by it, not before a restart.
 */
export function precedingResults(
  history: History,
  key: string,
  lot: string,
  asOf: Moment,
  count: number,
): PrecedingResult[] {
  const found: PrecedingResult[] = []
  for (const entry of walkBack(history, key, lot, asOf)) {
    if (found.length === count) break
    found.push(entry)
  }
  return found.reverse()
}

/**
 * Results before a lot that were sampled within so many days of it, oldest first.
 * @param key of `historyKey`
 * @param lot its id; one that the history does not hold has none before it
 * @param asOf calendar date
 * @param days between both ends of sampling, at most
 * Note: valid and known as for `precedingResults`.
 */
export function resultsWithin(
  history: History,
  key: string,
  lot: string,
  asOf: Moment,
  days: number,
): PrecedingResult[] {
  const sampled = history.lots[history.place.get(lot) ?? -1]?.sampled
  const found: PrecedingResult[] = []
  for (const entry of walkBack(history, key, lot, asOf)) {
    if (sampled === undefined || days < daysBetween(entry.sampled, sampled)) break
    found.push(entry)
  }
  return found.reverse()
}

function* walkBack(history: History, key: string, lot: string, asOf: Moment): Generator<PrecedingResult> {
  const place = history.place.get(lot)
  const list = history.entries.get(key)
  if (place === undefined || list === undefined) return
  const begin = history.restarts.filter((restart) => restart <= place).at(-1) ?? 0
  for (let index = firstAtOrAfter(list, placeOf, place) - 1; 0 <= index; index -= 1) {
    const entry = list[index]
    if (entry === undefined || entry.place < begin) return
    const found = standingOn(entry, key, asOf)
    if (found?.valid === true && !isWithdrawn(entry.lot, asOf)) yield found.preceding
  }
}

function standingOn({ lot, knownDay, today }: Entry, key: string, asOf: Moment): Standing | undefined {
  if (knownDay <= asOf.day) return today
  const then = resultsOn(lot, asOf).filter(
    (result) => result.role === 'producer' && keyOf(lot, result) === key,
  )
  return standing(lot, then)
}

function isWithdrawn({ withdrawn }: HistoryLot, asOf: Moment): boolean {
  return withdrawn !== undefined && isBy(withdrawn, asOf)
}

function placeOf({ place }: { readonly place: number }): number {
  return place
}

/** Tests of one property, at any condition and age; of one kind of sample where it is named. */
export interface Covering {
  readonly property: string
  readonly sample?: 'grab' | 'composite' | undefined
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
  const tests = tested[next]?.place === place ? tested[next].begun.filter((day) => day <= asOf.day).length : 0
  const earlier = before === undefined ? undefined : history.lots[before.place]
  const begin = earlier?.sampled ?? history.lots[0]?.from ?? own.from
  return {
    ...(earlier === undefined ? {} : { since: earlier.id }),
    hours: hoursBetween(begin, own.sampled) ?? 24 * daysBetween(begin, own.sampled),
    tonnes:
      (history.produced[place] ?? 0) - (before === undefined ? 0 : (history.produced[before.place] ?? 0)),
    tests,
  }
}

/** The last place before another whose first test was begun by the date. */
function lastBegun(tested: readonly TestedPlace[], end: number, asOf: Moment): TestedPlace | undefined {
  for (let index = end - 1; 0 <= index; index -= 1)
    if ((tested[index]?.begun[0] ?? Infinity) <= asOf.day) return tested[index]
  return undefined
}

function testedPlaces(history: History, { property, sample }: Covering): readonly TestedPlace[] {
  const key = `${property}|${sample ?? ''}`
  const known = history.tested.get(key)
  if (known !== undefined) return known
  const counts = (test: { readonly property: string; readonly sampleKind?: string }) =>
    test.property === property && (sample === undefined || test.sampleKind === sample)
  const places = history.lots.flatMap((lot, place) => {
    const results = lot.results
      .filter((result) => result.role === 'producer' && counts(result))
      .map((result) => ({ sample: result.sample, day: (result.begun ?? knownSince(result)).day }))
    const under = [...(lot.planned ?? []), ...(lot.unmade ?? [])]
      .filter(counts)
      .flatMap(({ sample: own, begun }) => (begun === undefined ? [] : [{ sample: own, day: begun.day }]))
    const bySample = Map.groupBy([...results, ...under], (test) => test.sample)
    const begun = [...bySample.values()]
      .map((own) => Math.min(...own.map(({ day }) => day)))
      .sort((a, b) => a - b)
    return begun.length === 0 ? [] : [{ place, begun }]
  })
  history.tested.set(key, places)
  return places
}
