/**
 * The results of one source on samples of one duty in order of their taking: a lot may hold several regular samples,
 * each of which is held against the samples before it, those of its own lot among them.
 */
import { dutyOf, type Duty } from '../measure/duty.ts'
import { compareMoments, daysBetween, type Moment } from '../measure/moment.ts'
import { observationsOf } from '../result/observation.ts'
import type { PrecedingResult } from '../result/result.ts'
import {
  type History,
  historyKey,
  type HistoryLot,
  isWithdrawn,
  type Standing,
  standingsOf,
} from './history.ts'
import type { SampleOfDuty } from './sample-of-duty.ts'

interface SampleEntry {
  readonly lot: HistoryLot
  readonly place: number
  readonly sample: string
  readonly taken: Moment
  /** In order of their days. */
  readonly standings: readonly Standing[]
}

/** Samples in order of their taking, and the place of each by lot and mark. */
export interface SampleSeries {
  readonly entries: readonly SampleEntry[]
  readonly places: ReadonlyMap<string, number>
}

/** A sample with its lot, by id. */
type SampleOfLot = SampleOfDuty & { readonly lot: string }

/**
 * The most recent results before a sample, oldest first.
 * @param key of `historyKey`
 * @param of the sample; one without a result of that key has none before it
 * @param asOf calendar date
 * @param count at most so many
 * @returns each with the moment at which its sample was complete
 * Note: as of `precedingResults`, of samples of one duty in place of lots, those of the sample's own lot among them.
 */
export function precedingSamples(
  history: History,
  key: string,
  of: SampleOfLot,
  asOf: Moment,
  count: number,
): PrecedingResult[] {
  const found: PrecedingResult[] = []
  for (const entry of samplesBefore(history, key, of, asOf)) {
    if (found.length === count) break
    found.push(entry)
  }
  return found.reverse()
}

/**
 * Results before a sample that were taken within so many days of it, oldest first.
 * @param key of `historyKey`
 * @param of the sample; one without a result of that key has none before it
 * @param asOf calendar date
 * @param days between both ends of sampling, at most
 * Note: validity and knowledge as of `precedingSamples`.
 */
export function samplesWithin(
  history: History,
  key: string,
  of: SampleOfLot,
  asOf: Moment,
  days: number,
): PrecedingResult[] {
  const own = history.lots[history.place.get(of.lot) ?? -1]
  if (own === undefined) return []
  const taken = takenOf(own, of.sample)
  const found: PrecedingResult[] = []
  for (const entry of samplesBefore(history, key, of, asOf)) {
    if (days < daysBetween(entry.sampled, taken)) break
    found.push(entry)
  }
  return found.reverse()
}

/** @param key of `historyKey` */
function seriesKey(key: string, duty: Duty): string {
  return `${duty}|${key}`
}

/** When a sample was complete; the lot's own time of sampling stands in where it states none. */
function takenOf({ sampled, takenAt = {} }: HistoryLot, sample: string): Moment {
  return (Object.hasOwn(takenAt, sample) ? takenAt[sample] : undefined) ?? sampled
}

/** The latest first, back to the last event that began the series anew. */
function* samplesBefore(
  history: History,
  key: string,
  of: SampleOfLot,
  asOf: Moment,
): Generator<PrecedingResult> {
  const { entries, places } = seriesOf(history, of.duty, seriesKey(key, of.duty))
  const own = places.get(markOf(of.lot, of.sample))
  const taken = own === undefined ? undefined : entries[own]?.taken
  if (own === undefined || taken === undefined) return
  const begin = history.restartDays.findLast((day) => day <= taken.day) ?? Number.NEGATIVE_INFINITY
  for (let index = own - 1; 0 <= index; index -= 1) {
    const entry = entries[index]
    if (entry === undefined || entry.taken.day < begin) return
    const stood = entry.standings.findLast(({ from }) => from <= asOf.day)?.result
    if (stood !== undefined && !isWithdrawn(entry.lot, asOf)) yield { ...stood, sampled: entry.taken }
  }
}

/** All series of a duty are made at once, since whoever asks for one asks lot after lot. */
function seriesOf(history: History, duty: Duty, key: string): SampleSeries {
  if (!history.samples.has(duty)) {
    for (const [name, entries] of entriesByKey(history, duty)) history.samples.set(name, inOrder(entries))
    history.samples.set(duty, NOTHING)
  }
  return history.samples.get(key) ?? NOTHING
}

const NOTHING: SampleSeries = { entries: [], places: new Map() }

function entriesByKey({ lots }: History, duty: Duty): Map<string, SampleEntry[]> {
  const found = new Map<string, SampleEntry[]>()
  lots.forEach((lot, place) => {
    const own = observationsOf(lot).filter(
      ({ result }) => result.role === 'producer' && dutyOf(result) === duty,
    )
    const bySample = Map.groupBy(own, ({ result: { property, condition, age, method, sample } }) =>
      JSON.stringify([seriesKey(historyKey(lot.class, property, condition, age, method), duty), sample]),
    )
    for (const [name, observations] of bySample) {
      const [key, sample] = JSON.parse(name) as [string, string]
      const entry = {
        lot,
        place,
        sample,
        taken: takenOf(lot, sample),
        standings: standingsOf(lot, observations),
      }
      const list = found.get(key)
      if (list === undefined) found.set(key, [entry])
      else list.push(entry)
    }
  })
  return found
}

function inOrder(entries: readonly SampleEntry[]): SampleSeries {
  const sorted = entries.toSorted(
    (a, b) => compareMoments(a.taken, b.taken) || a.place - b.place || (a.sample < b.sample ? -1 : 1),
  )
  const places = new Map(sorted.map(({ lot, sample }, place) => [markOf(lot.id, sample), place]))
  return { entries: sorted, places }
}

function markOf(lot: string, sample: string): string {
  return `${lot}|${sample}`
}
