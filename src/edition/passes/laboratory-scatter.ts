/** Pass 2 for laboratories: the scatter between their control batches, as it was known on each day. */
import {
  type Batch,
  pooledKey,
  type PooledStep,
  pooledSteps,
  repeatedKey,
} from '../../core/doubt/pooled-repeatability.ts'
import { INDEX_OF, RATIO_OF } from '../../core/measure/ratio-indices.ts'
import type { Result } from '../../core/result/result.ts'
import type { ControlEntry } from '../shape/edition.ts'

export type PooledByLaboratory = Readonly<Record<string, Readonly<Record<string, readonly PooledStep[]>>>>

/** Batches of one laboratory that should agree within their groups. */
export interface BatchSeries {
  /** The index whose uncertainty they tell. */
  readonly property: Result['property']
  readonly condition: string
  readonly age: string
  /**
   * Control mortars, grouped by cement lot; or indices of single lots tested more than once, grouped by lot.
   */
  readonly of: 'control batches' | 'repeated lots'
  readonly batches: readonly Batch[]
}
type Lots = Iterable<{ readonly id: string; readonly results: readonly Result[] }>

/**
 * @param controls every control batch known by the as-of date
 * @param lots with their results; several valid indices of one kind in a lot are batches of a group
 * @returns by laboratory, then by the key that `pooledFor` asks with
 */
export function batchSeries(
  controls: Iterable<ControlEntry>,
  lots: Lots,
): Map<string, Map<string, BatchSeries>> {
  const series = new Map<string, Map<string, BatchSeries & { batches: Batch[] }>>()
  const add = (
    key: string,
    {
      laboratory,
      property,
      condition = '',
      age = '',
    }: Pick<Result, 'laboratory' | 'property' | 'condition' | 'age'>,
    of: BatchSeries['of'],
    batch: Batch,
  ) => {
    const own = series.get(laboratory) ?? new Map<string, BatchSeries & { batches: Batch[] }>()
    series.set(laboratory, own)
    const known = own.get(key)
    if (known === undefined) own.set(key, { property, condition, age, of, batches: [batch] })
    else known.batches.push(batch)
  }
  for (const { record, results } of controls) {
    for (const result of results) {
      const index = INDEX_OF[result.property]
      if (index === undefined || !result.valid) continue
      const named = { ...result, property: index }
      add(pooledKey(named), named, 'control batches', {
        group: record.cement.lot,
        tested: result.tested,
        mean: result.value,
      })
    }
  }
  for (const { id, results } of lots)
    for (const result of repeated(results))
      add(repeatedKey(result), result, 'repeated lots', {
        group: id,
        tested: result.tested,
        mean: result.value,
      })
  return series
}

/** What each laboratory's batches have taught by each day; arguments as of `batchSeries`. */
export function pooledByLaboratory(controls: Iterable<ControlEntry>, lots: Lots): PooledByLaboratory {
  return Object.fromEntries(
    [...batchSeries(controls, lots)].map(([laboratory, keys]) => [
      laboratory,
      Object.fromEntries([...keys].map(([key, { batches }]) => [key, pooledSteps(batches)])),
    ]),
  )
}

/** Valid indices of the producer that are not alone of their kind in a lot. */
function repeated(results: readonly Result[]): Result[] {
  const kinds = Map.groupBy(
    results.filter((result) => result.valid && result.role === 'producer' && result.property in RATIO_OF),
    (result) => `${result.laboratory}|${pooledKey(result)}`,
  )
  return [...kinds.values()].flatMap((batches) => (batches.length < 2 ? [] : batches))
}

/** The part that a source's own laboratories, conditions and ages ask for. */
export function pooledFor(pooled: PooledByLaboratory, results: Iterable<Result>): PooledByLaboratory {
  const wanted = new Map<string, Set<string>>()
  for (const result of results) {
    if (result.property in RATIO_OF)
      wanted.set(
        result.laboratory,
        (wanted.get(result.laboratory) ?? new Set()).add(pooledKey(result)).add(repeatedKey(result)),
      )
  }
  return Object.fromEntries(
    [...wanted].map(([laboratory, keys]) => [
      laboratory,
      Object.fromEntries(
        [...keys].flatMap((key) => {
          const steps = pooled[laboratory]?.[key]
          return steps === undefined ? [] : [[key, steps] as const]
        }),
      ),
    ]),
  )
}
