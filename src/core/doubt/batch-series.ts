/** A laboratory's batches gathered by the index whose uncertainty they tell. */
import { defined } from '../measure/defined.ts'
import type { Age } from '../measure/age.ts'
import { INDEX_OF, RATIO_OF } from '../measure/ratio-indices.ts'
import { isBounded } from '../result/bounds.ts'
import { type Observation, observationsOf, type Observed, standsOn } from '../result/observation.ts'
import { byTest } from '../result/by-test.ts'
import type { Result } from '../result/result.ts'
import { type Batch, pooledKey, repeatedKey } from './pooled-repeatability.ts'

/** Batches of one laboratory that should agree within their groups. */
export interface BatchSeries {
  /** The index whose uncertainty they tell. */
  readonly property: Result['property']
  readonly condition: string
  readonly age?: Age
  /**
   * Control mortars, grouped by cement lot; or indices of single lots tested more than once, grouped by lot.
   */
  readonly of: 'control batches' | 'repeated lots'
  readonly batches: readonly Batch[]
}

/** A control batch: the lot of its cement, and what was measured on it. */
export interface ControlBatch extends Observed {
  readonly cement: string
}

/** A material lot, by id, with what was measured on it. */
export interface TestedLot extends Observed {
  readonly id: string
}

/**
 * Gathers what tells of a laboratory's scatter.
 * @param controls every control batch known by the as-of date
 * @param lots with their results; several valid indices of one kind in a lot are
 * batches of a group, one for each control
 * @returns by laboratory, then by `pooledKey` for control batches and `repeatedKey` for repeated lots
 */
export function batchSeries(
  controls: Iterable<ControlBatch>,
  lots: Iterable<TestedLot>,
): Map<string, Map<string, BatchSeries>> {
  const gathered: Gathered = new Map()
  for (const control of controls)
    for (const observation of observationsOf(control)) addControl(gathered, control.cement, observation)
  for (const lot of lots)
    for (const observation of repeated(lot))
      addBatch(gathered, repeatedKey(observation.result), observation, { of: 'repeated lots', group: lot.id })
  return gathered
}

type Gathered = Map<string, Map<string, BatchSeries & { batches: Batch[] }>>

function addControl(gathered: Gathered, cement: string, observation: Observation): void {
  const { result } = observation
  const property = INDEX_OF[result.property]
  if (property === undefined || !result.valid || isBounded(result)) return
  const index = { ...result, property }
  addBatch(
    gathered,
    pooledKey(index),
    { ...observation, result: index },
    { of: 'control batches', group: cement },
  )
}

function addBatch(
  gathered: Gathered,
  key: string,
  { result, from, until }: Observation,
  { of, group }: { of: BatchSeries['of']; group: string },
): void {
  const { laboratory, property, condition = '', age, tested, value } = result
  const own = gathered.get(laboratory) ?? new Map<string, BatchSeries & { batches: Batch[] }>()
  gathered.set(laboratory, own)
  const known = from === tested.day ? undefined : from
  const batch = { group, tested, mean: value, ...defined({ from: known, until }) }
  const series = own.get(key)
  if (series === undefined) own.set(key, { property, condition, ...defined({ age }), of, batches: [batch] })
  else series.batches.push(batch)
}

/**
 * Valid indices of the producer that are not alone of their kind in a lot, on one day at least: of those against one
 * control the first, since what they share does not scatter between them.
 */
function repeated(lot: TestedLot): Observation[] {
  const indices = observationsOf(lot).filter(
    ({ result }) =>
      result.valid &&
      !isBounded(result) &&
      // Of a figure nobody knows whether it shares its control with another.
      result.finished === undefined &&
      result.role === 'producer' &&
      result.property in RATIO_OF,
  )
  const kinds = Map.groupBy(indices, ({ result }) => `${result.laboratory}|${pooledKey(result)}`)
  return [...kinds.values()]
    .map(onePerControl)
    .flatMap((batches) =>
      batches.some(({ from }) => 1 < batches.filter((other) => standsOn(other, from)).length) ? batches : [],
    )
}

/** Indices that name no control are taken to share one. */
function onePerControl(indices: readonly Observation[]): Observation[] {
  const controls = Map.groupBy(indices, ({ result }) => result.control ?? '')
  return [...controls.values()].flatMap(firstStanding)
}

/** On each day the one that has stood the longest; another only from the day on which it no longer does. */
function firstStanding(alike: readonly Observation[]): Observation[] {
  const standing: Observation[] = []
  let ended = Number.NEGATIVE_INFINITY
  for (const one of alike.toSorted((a, b) => a.from - b.from || byTest(a.result, b.result))) {
    const from = Math.max(one.from, ended)
    const until = one.until ?? Number.POSITIVE_INFINITY
    if (until <= from) continue
    standing.push({ ...one, from })
    ended = until
  }
  return standing
}
