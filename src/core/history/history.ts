/**
 * The results of one source in order of sampling, so that a lot can be judged against those before it. Built
 * once a source, with the days on which each result stood; a query walks back from the lot's place, never looks
 * at a later lot, and asks as of a date: it answers what a history built on that date would.
 */
import { type Standing, standingsOf } from './standings.ts'
import type { SampleSeries } from './sample-series.ts'
import { firstAtOrAfter } from '../statistics/first-at-or-after.ts'
import type { Age } from '../measure/age.ts'
import type { Duty } from '../measure/duty.ts'
import { kept } from '../measure/kept.ts'
import { compareMoments, daysBetween, isBy, type Moment } from '../measure/moment.ts'
import { type Observation, observationsOf, type Observed, type Span } from '../result/observation.ts'
import type { PlannedTest, PrecedingResult, UnmadeResult } from '../result/result.ts'

/** What history needs of a lot. */
export interface HistoryLot extends Observed {
  readonly id: string
  readonly sampled: Moment
  readonly class: string | null
  /** Tests that were done and gave no value. */
  readonly unmade?: readonly UnmadeResult[]
  readonly planned?: readonly PlannedTest[]
  /** When its regular samples were complete, by mark. */
  readonly takenAt?: Readonly<Record<string, Moment>>
  /** Mass produced, in tonnes, and the moment at which production began. */
  readonly tonnes: number
  readonly from: Moment
  /** Date from which the lot is withdrawn, for good. */
  readonly withdrawn?: Moment
}

interface Entry {
  readonly lot: HistoryLot
  readonly place: number
  /** In order of their days. */
  readonly standings: readonly Standing[]
}

/** A lot with tests, and the days on which each of its samples counts as tested. */
export interface TestedPlace {
  readonly place: number
  readonly samples: readonly (readonly Span[])[]
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
  /** Days of the events at which a series begins anew, in order. */
  readonly restartDays: readonly number[]
  /** Results on samples of one duty by key; filled when first asked for. */
  readonly samples: Map<Duty, ReadonlyMap<string, SampleSeries>>
  /** Places with a test, by property and kind of sample; filled when first asked for. */
  readonly tested: Map<string, readonly TestedPlace[]>
}

/**
 * The key under which a source's results form one series: results of another class or method are never
 * compared.
 * @param lotClass class that the lot claims; null where it claims none
 * @param property,condition,method as a result states them; undefined where it states none
 * @returns the parts with the age in hours among them, so that "72 h" and "3 d" are one series, joined by "|"; an
 * empty part for what is missing
 */
export function historyKey(
  lotClass: string | null,
  property: string,
  condition?: string,
  age?: Age,
  method?: string,
): string {
  return [lotClass ?? '', property, condition ?? '', age?.hours ?? '', method ?? ''].join('|')
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
 * The history of one source.
 * @param lots in order of sampling (`bySampling`)
 * @param restartDates dates of the events that begin a series anew
 * Notes: 1. only the producer's results enter, on each day the representative of each lot and key; 2. a result
 * known only within bounds counts with them; 3. duplicates are those of `duplicatesOf`.
 */
export function buildHistory(lots: readonly HistoryLot[], restartDates: readonly Moment[]): History {
  const entries = new Map<string, Entry[]>()
  lots.forEach((lot, place) => {
    for (const [key, observations] of byKey(lot)) {
      const entry = { lot, place, standings: standingsOf(lot, observations) }
      kept(entries, key, (): Entry[] => []).push(entry)
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
    restartDays: restartDates.map(({ day }) => day).sort((a, b) => a - b),
    lots,
    produced,
    samples: new Map(),
    tested: new Map(),
  }
}

function byKey(lot: HistoryLot): Map<string, Observation[]> {
  const found = new Map<string, Observation[]>()
  for (const observation of observationsOf(lot)) {
    const { role, property, condition, age, method } = observation.result
    if (role !== 'producer') continue
    const key = historyKey(lot.class, property, condition, age, method)
    kept(found, key, (): Observation[] => []).push(observation)
  }
  return found
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
  return latestOf(walkBack(history, key, lot, asOf), count)
}

/**
 * The most recent of results, oldest first.
 * @param back the latest first; no more of them are made than asked for
 * @param count at most so many
 */
export function latestOf(back: Iterable<PrecedingResult>, count: number): PrecedingResult[] {
  const found: PrecedingResult[] = []
  for (const entry of back) {
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
  const own = history.lots[history.place.get(lot) ?? -1]
  return own === undefined ? [] : withinDays(walkBack(history, key, lot, asOf), own.sampled, days)
}

/**
 * Results of the days before a moment, oldest first.
 * @param back the latest first; none is made beyond the first that is too early
 * @param days between both ends of sampling, at most
 */
export function withinDays(back: Iterable<PrecedingResult>, end: Moment, days: number): PrecedingResult[] {
  const found: PrecedingResult[] = []
  for (const entry of back) {
    if (days < daysBetween(entry.sampled, end)) break
    found.push(entry)
  }
  return found.reverse()
}

function* walkBack(history: History, key: string, lot: string, asOf: Moment): Generator<PrecedingResult> {
  const place = history.place.get(lot)
  const list = history.entries.get(key)
  if (place === undefined || list === undefined) return
  const begin = history.restarts.findLast((restart) => restart <= place) ?? 0
  for (let index = firstAtOrAfter(list, placeOf, place) - 1; 0 <= index; index -= 1) {
    const entry = list[index]
    if (entry === undefined || entry.place < begin) return
    const stood = entry.standings.findLast(({ from }) => from <= asOf.day)?.result
    if (stood !== undefined && !isWithdrawn(entry.lot, asOf)) yield stood
  }
}

/** Whether a lot is withdrawn by a date. */
export function isWithdrawn({ withdrawn }: HistoryLot, asOf: Moment): boolean {
  return withdrawn !== undefined && isBy(withdrawn, asOf)
}

/**
 * Where something stands in the order of sampling.
 * @param place of an entry or a tested lot
 * @returns from 0
 */
export function placeOf({ place }: { readonly place: number }): number {
  return place
}

/**
 * The source's first lot sampled by a date; undefined before it.
 * @param asOf calendar date
 */
export function firstLot({ lots }: History, asOf: Moment): HistoryLot | undefined {
  return lots.find(({ sampled }) => isBy(sampled, asOf))
}
