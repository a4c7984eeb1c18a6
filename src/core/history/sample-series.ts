/**
 * The results of one source on samples of one duty in order of their taking: a lot may hold several regular samples,
 * each of which is held against the samples before it, those of its own lot among them.
 */
import { dutyOf, type Duty } from '../measure/duty.ts'
import { kept } from '../measure/kept.ts'
import { compareMoments, type Moment } from '../measure/moment.ts'
import { observationsOf } from '../result/observation.ts'
import type { PrecedingResult } from '../result/result.ts'
import { type History, historyKey, type HistoryLot, isWithdrawn, latestOf, withinDays } from './history.ts'
import { type Standing, standingsOf } from './standings.ts'
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
  return latestOf(samplesBefore(history, key, of, asOf), count)
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
  return own === undefined
    ? []
    : withinDays(samplesBefore(history, key, of, asOf), takenOf(own, of.sample), days)
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
  const { entries, places } = seriesOf(history, of.duty, key)
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
  return kept(history.samples, duty, () => seriesByKey(history, duty)).get(key) ?? NOTHING
}

const NOTHING: SampleSeries = { entries: [], places: new Map() }

function seriesByKey({ lots }: History, duty: Duty): ReadonlyMap<string, SampleSeries> {
  const found = new Map<string, SampleEntry[]>()
  lots.forEach((lot, place) => {
    const own = observationsOf(lot).filter(
      ({ result }) => result.role === 'producer' && dutyOf(result) === duty,
    )
    const byKey = Map.groupBy(own, ({ result: { property, condition, age, method } }) =>
      historyKey(lot.class, property, condition, age, method),
    )
    for (const [key, alike] of byKey)
      for (const [sample, observations] of Map.groupBy(alike, ({ result }) => result.sample)) {
        const standings = standingsOf(lot, observations)
        const entry = { lot, place, sample, taken: takenOf(lot, sample), standings }
        kept(found, key, (): SampleEntry[] => []).push(entry)
      }
  })
  return new Map([...found].map(([key, entries]) => [key, inOrder(entries)]))
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
