/** Pass 2 for laboratories: the scatter between their batches, as it was known on each day. */
import { batchSeries, type TestedLot } from '../../core/doubt/batch-series.ts'
import {
  pooledKey,
  type PooledStep,
  pooledSteps,
  repeatedKey,
} from '../../core/doubt/pooled-repeatability.ts'
import { RATIO_OF } from '../../core/measure/ratio-indices.ts'
import type { Result } from '../../core/result/result.ts'
import { controlBatch } from '../shape/control-batch.ts'
import type { ControlEntry } from '../shape/edition.ts'

export type PooledByLaboratory = Readonly<Record<string, Readonly<Record<string, readonly PooledStep[]>>>>

/** What each laboratory's batches have taught by each day; arguments as of `batchSeries`. */
export function pooledByLaboratory(
  controls: Iterable<ControlEntry>,
  lots: Iterable<TestedLot>,
): PooledByLaboratory {
  const batches = [...controls].map((entry) => ({ ...entry, ...controlBatch(entry) }))
  const gathered = batchSeries(batches, lots)
  return Object.fromEntries(
    [...gathered].map(([laboratory, keys]) => [
      laboratory,
      Object.fromEntries([...keys].map(([key, { batches }]) => [key, pooledSteps(batches)])),
    ]),
  )
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
