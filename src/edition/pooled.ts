/** Pass 2 for laboratories: the scatter between their control batches, as it was known on each day. */
import { type Batch, pooledKey, type PooledStep, pooledSteps, repeatedKey } from '../core/pooled-repeatability.ts'
import type { Result } from '../core/result.ts'
import type { ControlEntry } from './edition.ts'

/** An index scatters as the means that it is the ratio of. */
const INDEX_OF: Partial<Record<Result['property'], Result['property']>> = { 'compressive-strength': 'strength-activity-index', 'bulk-resistivity': 'resistivity-index' }

export type PooledByLaboratory = Readonly<Record<string, Readonly<Record<string, readonly PooledStep[]>>>>

/**
 * @param controls every control batch known by the as-of date; batches of one cement lot are a group
 * @param lots with their results; several valid indices of one kind in a lot are batches of a group
 */
export function pooledByLaboratory(controls: Iterable<ControlEntry>, lots: Iterable<{ readonly id: string; readonly results: readonly Result[] }>): PooledByLaboratory {
  const series = new Map<string, Map<string, Batch[]>>()
  const add = (laboratory: string, key: string, batch: Batch) => {
    const own = series.get(laboratory) ?? new Map<string, Batch[]>()
    series.set(laboratory, own)
    const batches = own.get(key)
    if (batches === undefined) own.set(key, [batch])
    else batches.push(batch)
  }
  for (const { id, record, results } of controls) {
    for (const result of results) {
      const index = INDEX_OF[result.property]
      if (index === undefined || !result.valid) continue
      add(result.laboratory, pooledKey({ ...result, property: index }), { group: record.cement.lot ?? id, tested: result.tested, mean: result.value })
    }
  }
  for (const { id, results } of lots) for (const result of repeated(results)) add(result.laboratory, repeatedKey(result), { group: id, tested: result.tested, mean: result.value })
  return Object.fromEntries([...series].map(([laboratory, keys]) => [laboratory, Object.fromEntries([...keys].map(([key, batches]) => [key, pooledSteps(batches)]))]))
}

/** Valid indices of the producer that are not alone of their kind in a lot. */
function repeated(results: readonly Result[]): Result[] {
  const kinds = Map.groupBy(results.filter((result) => result.valid && result.role === 'producer' && Object.values(INDEX_OF).includes(result.property)), (result) => `${result.laboratory}|${pooledKey(result)}`)
  return [...kinds.values()].flatMap((batches) => (batches.length < 2 ? [] : batches))
}

/** The part that a source's own laboratories, conditions and ages ask for. */
export function pooledFor(pooled: PooledByLaboratory, results: Iterable<Result>): PooledByLaboratory {
  const wanted = new Map<string, Set<string>>()
  for (const result of results) {
    if (Object.values(INDEX_OF).includes(result.property)) wanted.set(result.laboratory, (wanted.get(result.laboratory) ?? new Set()).add(pooledKey(result)).add(repeatedKey(result)))
  }
  return Object.fromEntries([...wanted].map(([laboratory, keys]) => [laboratory, Object.fromEntries([...keys].flatMap((key) => { const steps = pooled[laboratory]?.[key]; return steps === undefined ? [] : [[key, steps] as const] }))]))
}
