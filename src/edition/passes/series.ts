/** A source's results over sampling, ready for charts: one series for each property, condition and age. */
import { mean } from '../../core/statistics/descriptive.ts'
import { type Age, isSameAge } from '../../core/measure/age.ts'
import { defined } from '../../core/measure/defined.ts'
import { property, type PropertyKey, storedUnit } from '../../core/measure/properties.ts'
import { isBounded } from '../../core/result/bounds.ts'
import type { Result } from '../../core/result/result.ts'
import type { Series, SeriesPoint } from '../shape/edition.ts'
import { historyKey, precedingResults } from '../../core/history/history.ts'
import { representative } from '../../core/history/representative.ts'
import { resultReasonIn } from '../../words/result-reasons.ts'
import { dueWords, overdueWords } from '../../words/standing.ts'
import type { UnitSystem } from '../../words/unit-systems.ts'
import { resultText } from '../../words/units.ts'
import type { ComputedLot } from './computed-lot.ts'
import type { SourceState } from './source-state.ts'

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

/** What one series is of. */
interface SeriesKey {
  readonly property: PropertyKey
  readonly condition?: string
  readonly age?: Age
}

/**
 * All charted series of a source, each with a point for every lot that has a result or a planned test there.
 */
export function sourceSeries(state: SourceState): Series[] {
  const points = new Map<string, { key: SeriesKey; points: SeriesPoint[] }>()
  for (const lot of state.lots)
    for (const [name, key] of seriesKeys(lot)) {
      const own = points.get(name) ?? { key, points: [] }
      points.set(name, own)
      own.points.push(seriesPoint(state, lot, key))
    }
  return [...points.values()]
    .sort((a, b) => (orderOf(a.key) < orderOf(b.key) ? -1 : 1))
    .map((own) => ({
      ...own.key,
      unit: storedUnit(own.key.property),
      decimals: property(own.key.property).decimals,
      points: own.points,
    }))
}

function orderOf({ property: charted, condition = '', age }: SeriesKey): string {
  return `${String(CHARTED.indexOf(charted)).padStart(2, '0')}|${condition}|${String(age?.hours ?? '').padStart(8, '0')}`
}

/** What a lot has a result or a planned test of, each once. */
function seriesKeys(lot: ComputedLot): Map<string, SeriesKey> {
  const producers = lot.results.filter((result) => result.role === 'producer')
  const charted = [...producers, ...lot.planned].filter((item) => CHARTED.includes(item.property))
  return new Map(
    charted.map(({ property: key, condition, age }) => [
      `${key}|${condition ?? ''}|${age?.hours ?? ''}`,
      defined({ property: key, condition, age }),
    ]),
  )
}

function seriesPoint(state: SourceState, lot: ComputedLot, key: SeriesKey): SeriesPoint {
  const result = representative(lot.results.filter((candidate) => matches(candidate, key)))
  return result === undefined ? awaitedPoint(lot, key) : resultPoint(state, lot, result)
}

function awaitedPoint({ id, sampled, planned }: ComputedLot, key: SeriesKey): SeriesPoint {
  const test = planned.find((candidate) => matches({ ...candidate, role: 'producer' }, key))
  return defined({
    lot: id,
    at: sampled,
    value: null,
    status: 'pending',
    note: test && (test.overdueSince === undefined ? dueWords(test.due) : overdueWords(test.overdueSince)),
  } as const)
}

function resultPoint(state: SourceState, lot: ComputedLot, result: Result): SeriesPoint {
  const {
    property: key,
    condition,
    age,
    method,
    reasons: [reason],
  } = result
  const sameSeries = historyKey(lot.class, key, condition, age, method)
  const preceding = precedingResults(state.history, sameSeries, lot.id, state.asOf, PRECEDING)
  return defined({
    lot: lot.id,
    at: lot.sampled,
    value: result.value,
    status: lot.withdrawn !== undefined ? 'withdrawn' : result.valid ? 'valid' : 'not-valid',
    note: reason === undefined ? boundedNote(result, state.units) : resultReasonIn(reason, state.units),
    // A mean of values of which one is known only within bounds is no number.
    ...(preceding.length === 0 || preceding.some(isBounded)
      ? {}
      : {
          precedingMean: mean(preceding.map((entry) => entry.value)),
          precedingCount: preceding.length,
        }),
  } as const)
}

function boundedNote(result: Result, units: UnitSystem): string | undefined {
  return isBounded(result) ? `known only as ${resultText(result, units)}` : undefined
}

function matches(
  candidate: Pick<Result, 'property' | 'condition' | 'age' | 'role'>,
  key: SeriesKey,
): boolean {
  return (
    candidate.role === 'producer' &&
    candidate.property === key.property &&
    candidate.condition === key.condition &&
    isSameAge(candidate.age, key.age)
  )
}
