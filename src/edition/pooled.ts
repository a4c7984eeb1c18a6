/** Pass 2 for laboratories: the scatter between their control batches, as it was known on each day. */
import { type Batch, pooledKey, type PooledStep, pooledSteps } from '../core/pooled-repeatability.ts'
import type { Result } from '../core/result.ts'
import type { ControlEntry } from './edition.ts'

/** An index scatters as the means that it is the ratio of. */
const INDEX_OF: Partial<Record<Result['property'], Result['property']>> = { 'compressive-strength': 'strength-activity-index', 'bulk-resistivity': 'resistivity-index' }

export type PooledByLaboratory = Readonly<Record<string, Readonly<Record<string, readonly PooledStep[]>>>>

/** @param controls every control batch known by the as-of date; batches of one cement lot are a group */
export function pooledByLaboratory(controls: Iterable<ControlEntry>): PooledByLaboratory {
  const series = new Map<string, Map<string, Batch[]>>()
  for (const { id, record, results } of controls) {
    for (const result of results) {
      const index = INDEX_OF[result.property]
      if (index === undefined || !result.valid) continue
      const laboratory = series.get(result.laboratory) ?? new Map<string, Batch[]>()
      series.set(result.laboratory, laboratory)
      const key = pooledKey({ ...result, property: index })
      const batches = laboratory.get(key) ?? []
      laboratory.set(key, batches)
      batches.push({ group: record.cement.lot ?? id, tested: result.tested, mean: result.value })
    }
  }
  return Object.fromEntries([...series].map(([laboratory, keys]) => [laboratory, Object.fromEntries([...keys].map(([key, batches]) => [key, pooledSteps(batches)]))]))
}

/** The part that a source's own laboratories, conditions and ages ask for. */
export function pooledFor(pooled: PooledByLaboratory, results: Iterable<Result>): PooledByLaboratory {
  const wanted = new Map<string, Set<string>>()
  for (const result of results) {
    if (Object.values(INDEX_OF).includes(result.property)) wanted.set(result.laboratory, (wanted.get(result.laboratory) ?? new Set()).add(pooledKey(result)))
  }
  return Object.fromEntries([...wanted].map(([laboratory, keys]) => [laboratory, Object.fromEntries([...keys].map((key) => [key, pooled[laboratory]?.[key] ?? []]))]))
}
