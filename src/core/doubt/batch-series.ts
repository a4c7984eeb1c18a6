/** A laboratory's batches gathered by the index whose uncertainty they tell. */
import { defined } from '../measure/defined.ts'
import type { Age } from '../measure/age.ts'
import { INDEX_OF, RATIO_OF } from '../measure/ratio-indices.ts'
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
export interface ControlBatch {
  readonly cement: string
  readonly results: readonly Result[]
}

/** A material lot, by id, with what was measured on it. */
export interface TestedLot {
  readonly id: string
  readonly results: readonly Result[]
}

/**
 * Gathers what tells of a laboratory's scatter.
 * @param controls every control batch known by the as-of date
 * @param lots with their results; several valid indices of one kind in a lot are batches of a group
 * @returns by laboratory, then by `pooledKey` for control batches and `repeatedKey` for repeated lots
 */
export function batchSeries(
  controls: Iterable<ControlBatch>,
  lots: Iterable<TestedLot>,
): Map<string, Map<string, BatchSeries>> {
  const gathered: Gathered = new Map()
  for (const { cement, results } of controls)
    for (const result of results) addControl(gathered, cement, result)
  for (const { id, results } of lots)
    for (const result of repeated(results))
      addBatch(gathered, repeatedKey(result), result, { of: 'repeated lots', group: id })
  return gathered
}

type Gathered = Map<string, Map<string, BatchSeries & { batches: Batch[] }>>

function addControl(gathered: Gathered, cement: string, result: Result): void {
  const property = INDEX_OF[result.property]
  if (property === undefined || !result.valid) return
  const index = { ...result, property }
  addBatch(gathered, pooledKey(index), index, { of: 'control batches', group: cement })
}

function addBatch(
  gathered: Gathered,
  key: string,
  { laboratory, property, condition = '', age, tested, value }: Result,
  { of, group }: { of: BatchSeries['of']; group: string },
): void {
  const own = gathered.get(laboratory) ?? new Map<string, BatchSeries & { batches: Batch[] }>()
  gathered.set(laboratory, own)
  const batch = { group, tested, mean: value }
  const known = own.get(key)
  if (known === undefined) own.set(key, { property, condition, ...defined({ age }), of, batches: [batch] })
  else known.batches.push(batch)
}

/** Valid indices of the producer that are not alone of their kind in a lot. */
function repeated(results: readonly Result[]): Result[] {
  const kinds = Map.groupBy(
    results.filter((result) => result.valid && result.role === 'producer' && result.property in RATIO_OF),
    (result) => `${result.laboratory}|${pooledKey(result)}`,
  )
  return [...kinds.values()].flatMap((batches) => (batches.length < 2 ? [] : batches))
}
