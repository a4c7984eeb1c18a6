/** A source's results over sampling, ready for charts: one series for each property, condition and age. */
import { property, type PropertyKey, storedUnit } from '../../core/measure/properties.ts'
import type { Result } from '../../core/result/result.ts'
import type { Series, SeriesPoint } from '../shape/edition.ts'
import { historyKey, precedingResults, representative } from '../../core/history/history.ts'
import { resultReasonWords } from '../../words/result-reasons.ts'
import type { ComputedLot, SourceState } from './source-state.ts'

/** Preceding results that the mean on a chart rests on, as uniformity clauses ask. */
const PRECEDING = 10

/** Properties with a chart, in the order of the page. */
export const CHARTED: readonly PropertyKey[] = [
  'strength-activity-index',
  'resistivity-index',
  'water-requirement',
  'loss-on-ignition',
  'residue-45um',
  'density',
  'oxide-sum',
  'CaO',
  'SO3',
  'moisture',
]

interface Place {
  readonly property: PropertyKey
  readonly condition?: string
  readonly age?: string
}

/**
 * All charted series of a source, each with a point for every lot that has a result or a planned test there.
 */
export function sourceSeries(state: SourceState): Series[] {
  const places = new Map<string, { place: Place; points: SeriesPoint[] }>()
  for (const lot of state.lots) {
    for (const [key, place] of placesOf(lot)) {
      const series = places.get(key) ?? { place, points: [] }
      places.set(key, series)
      series.points.push(seriesPoint(state, lot, place))
    }
  }
  return [...places.values()]
    .sort((a, b) => (order(a.place) < order(b.place) ? -1 : 1))
    .map(({ place, points }) => ({
      ...place,
      unit: storedUnit(place.property),
      decimals: property(place.property).decimals,
      points,
    }))
}

function order({ property: key, condition = '', age = '' }: Place): string {
  return `${String(CHARTED.indexOf(key)).padStart(2, '0')}|${condition}|${age.padStart(8, '0')}`
}

function placesOf(lot: ComputedLot): Map<string, Place> {
  const places = new Map<string, Place>()
  for (const item of [...lot.results.filter((result) => result.role === 'producer'), ...lot.planned]) {
    if (!CHARTED.includes(item.property)) continue
    places.set(`${item.property}|${item.condition ?? ''}|${item.age ?? ''}`, {
      property: item.property,
      ...(item.condition === undefined ? {} : { condition: item.condition }),
      ...(item.age === undefined ? {} : { age: item.age }),
    })
  }
  return places
}

function seriesPoint(state: SourceState, lot: ComputedLot, place: Place): SeriesPoint {
  const result = representative(lot.results.filter((candidate) => matches(candidate, place)))
  if (result === undefined) {
    const planned = lot.planned.find((candidate) => matches({ ...candidate, role: 'producer' }, place))
    return {
      lot: lot.id,
      at: lot.sampled,
      value: null,
      status: 'pending',
      note:
        planned?.overdueSince === undefined
          ? `due ${planned?.due ?? ''}`
          : `overdue since ${planned.overdueSince}`,
    }
  }
  const preceding = precedingResults(
    state.history,
    historyKey(lot.class, place.property, place.condition, place.age, result.method),
    lot.id,
    state.asOf,
    PRECEDING,
  )
  return {
    lot: lot.id,
    at: lot.sampled,
    value: result.value,
    status: lot.withdrawn !== undefined ? 'withdrawn' : result.valid ? 'valid' : 'not-valid',
    ...(result.reasons[0] === undefined ? {} : { note: resultReasonWords(result.reasons[0]) }),
    ...(preceding.length === 0
      ? {}
      : {
          precedingMean: preceding.reduce((sum, entry) => sum + entry.value, 0) / preceding.length,
          precedingCount: preceding.length,
        }),
  }
}

function matches(candidate: Pick<Result, 'property' | 'condition' | 'age' | 'role'>, place: Place): boolean {
  return (
    candidate.role === 'producer' &&
    candidate.property === place.property &&
    candidate.condition === place.condition &&
    candidate.age === place.age
  )
}
