/**
 * The results of one source in order of sampling, so that a lot can be judged against those before it. Built once a source;
 * a query walks back from the lot's place and never looks at a later lot.
 */
import type { PrecedingResult, Result } from '../core/result.ts'
import { dateOf } from '../core/moment.ts'

/** What history needs of a lot. */
export interface HistoryLot {
  readonly id: string
  readonly sampled: string
  readonly class: string | null
  readonly results: readonly Result[]
  /** Date of withdrawal. */
  readonly withdrawn?: string
}

interface Entry extends PrecedingResult { readonly place: number; readonly known: string; readonly withdrawn?: string; readonly valid: boolean }

export interface History {
  /** Place of a lot in the order of sampling. */
  readonly place: ReadonlyMap<string, number>
  readonly entries: ReadonlyMap<string, readonly Entry[]>
  /** Places at which a series begins anew. */
  readonly restarts: readonly number[]
}

export function historyKey(lotClass: string | null, property: string, condition?: string, age?: string, method?: string): string {
  return [lotClass ?? '', property, condition ?? '', age ?? '', method ?? ''].join('|')
}

/** Order of sampling, then id by code unit. */
export function bySampling(a: { sampled: string; id: string }, b: { sampled: string; id: string }): number {
  if (a.sampled !== b.sampled) return a.sampled < b.sampled ? -1 : 1
  return a.id < b.id ? -1 : 1
}

/** The one result that stands for the lot in its history: valid before not valid, a composite before a grab, then the latest. */
export function representative(results: readonly Result[]): Result | undefined {
  let best: Result | undefined
  for (const result of results) if (best === undefined || rank(result) > rank(best) || (rank(result) === rank(best) && result.tested > best.tested)) best = result
  return best
}

function rank(result: Result): number {
  return (result.valid ? 2 : 0) + (result.sampleKind === 'composite' ? 1 : 0)
}

/**
 * @param lots in order of sampling (`bySampling`)
 * @param restartDates dates of the events that begin a series anew
 */
export function buildHistory(lots: readonly HistoryLot[], restartDates: readonly string[]): History {
  const entries = new Map<string, Entry[]>()
  lots.forEach((lot, place) => {
    for (const [key, results] of resultsByKey(lot)) {
      const result = representative(results)
      if (result === undefined) continue
      const entry = {
        lot: lot.id, sampled: lot.sampled, value: result.value, place, known: dateOf(result.tested), valid: result.valid && result.censored === undefined,
        ...(lot.withdrawn === undefined ? {} : { withdrawn: lot.withdrawn }),
      }
      const list = entries.get(key)
      if (list === undefined) entries.set(key, [entry])
      else list.push(entry)
    }
  })
  const restarts = restartDates.map((date) => lots.findIndex((lot) => date <= dateOf(lot.sampled))).filter((place) => place >= 0).sort((a, b) => a - b)
  return { place: new Map(lots.map((lot, place) => [lot.id, place])), entries, restarts }
}

function resultsByKey(lot: HistoryLot): Map<string, Result[]> {
  const byKey = new Map<string, Result[]>()
  for (const result of lot.results) {
    if (result.role !== 'producer') continue
    const key = historyKey(lot.class, result.property, result.condition, result.age, result.method)
    const list = byKey.get(key)
    if (list === undefined) byKey.set(key, [result])
    else list.push(result)
  }
  return byKey
}

/**
 * Up to `count` preceding results of a lot, oldest first: valid, not withdrawn by the as-of date, known by it, not before a restart.
 */
export function precedingResults(history: History, key: string, lot: string, asOf: string, count: number): PrecedingResult[] {
  const place = history.place.get(lot)
  const list = history.entries.get(key)
  if (place === undefined || list === undefined) return []
  const begin = history.restarts.filter((restart) => restart <= place).at(-1) ?? 0
  const found: PrecedingResult[] = []
  for (let index = firstAtOrAfter(list, place) - 1; 0 <= index && found.length < count; index -= 1) {
    const entry = list[index]
    if (entry === undefined || entry.place < begin) break
    if (entry.valid && entry.known <= asOf && !(entry.withdrawn !== undefined && entry.withdrawn <= asOf)) found.push(entry)
  }
  return found.reverse().map(({ lot: id, sampled, value }) => ({ lot: id, sampled, value }))
}

function firstAtOrAfter(list: readonly Entry[], place: number): number {
  let low = 0
  let high = list.length
  while (low < high) {
    const middle = (low + high) >> 1
    if ((list[middle]?.place ?? 0) < place) low = middle + 1
    else high = middle
  }
  return low
}
