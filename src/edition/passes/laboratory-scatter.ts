/** Pass 2 for laboratories: the scatter between their batches, as it was known on each day. */
import { batchSeries, type BatchSeries, type TestedLot } from '../../core/doubt/batch-series.ts'
import {
  type Batch,
  pooledKey,
  type PooledStep,
  pooledSteps,
  repeatedKey,
} from '../../core/doubt/pooled-repeatability.ts'
import { kept } from '../../core/measure/kept.ts'
import { RATIO_OF } from '../../core/measure/ratio-indices.ts'
import { type Observed, observationsOf } from '../../core/result/observation.ts'
import { knownSince } from '../../core/result/result.ts'
import { controlBatch } from '../shape/control-batch.ts'
import type { ControlEntry } from '../shape/edition.ts'

export type PooledByLaboratory = Readonly<Record<string, Readonly<Record<string, readonly PooledStep[]>>>>

/** What the lots of one source tell of the scatter of laboratories, and ask of it. */
export interface BatchesOfSource {
  /** Series of lots tested more than once, by laboratory, then by key as of `batchSeries`. */
  readonly repeated: readonly (readonly [
    laboratory: string,
    series: readonly (readonly [key: string, series: BatchSeries])[],
  ])[]
  /** Keys of the indices of its lots, by laboratory. */
  readonly wanted: readonly (readonly [laboratory: string, keys: readonly string[]])[]
  /** Day on which the last of these indices became known, since 1970-01-01; null where there is none. */
  readonly lastKnown: number | null
}

/**
 * @param onRecord lots of the source in the order of the records
 * @param bySampling the same in order of sampling
 */
export function batchesOfSource(
  onRecord: readonly TestedLot[],
  bySampling: readonly Observed[],
): BatchesOfSource {
  const wanted = new Map<string, Set<string>>()
  let lastKnown: number | null = null
  for (const { result } of bySampling.flatMap(observationsOf)) {
    if (!(result.property in RATIO_OF)) continue
    kept(wanted, result.laboratory, () => new Set<string>())
      .add(pooledKey(result))
      .add(repeatedKey(result))
    lastKnown = Math.max(lastKnown ?? Number.NEGATIVE_INFINITY, knownSince(result).day)
  }
  return {
    lastKnown,
    repeated: [...batchSeries([], onRecord)].map(([laboratory, series]) => [laboratory, [...series]]),
    wanted: [...wanted].map(([laboratory, keys]) => [laboratory, [...keys]]),
  }
}

/** What each laboratory's batches have taught by each day. */
export function pooledByLaboratory(
  controls: Iterable<ControlEntry>,
  sources: readonly Pick<BatchesOfSource, 'repeated'>[],
): PooledByLaboratory {
  const ofControls = [
    ...batchSeries(
      [...controls].map((entry) => ({ ...entry, ...controlBatch(entry) })),
      [],
    ),
  ].map(([laboratory, series]) => [laboratory, [...series]] as const)
  const batches = new Map<string, Map<string, Batch[]>>()
  for (const [laboratory, series] of [...ofControls, ...sources.flatMap(({ repeated }) => repeated)])
    for (const [key, one] of series)
      kept(
        kept(batches, laboratory, () => new Map<string, Batch[]>()),
        key,
        (): Batch[] => [],
      ).push(...one.batches)
  return Object.fromEntries(
    [...batches].map(([laboratory, own]) => [
      laboratory,
      Object.fromEntries([...own].map(([key, all]) => [key, pooledSteps(all)])),
    ]),
  )
}

/** The part that a source's own laboratories, conditions and ages ask for. */
export function pooledFor(
  pooled: PooledByLaboratory,
  { wanted }: Pick<BatchesOfSource, 'wanted'>,
): PooledByLaboratory {
  return Object.fromEntries(
    wanted.map(([laboratory, keys]) => [
      laboratory,
      Object.fromEntries(
        keys.flatMap((key) => {
          const steps = pooled[laboratory]?.[key]
          return steps === undefined ? [] : [[key, steps] as const]
        }),
      ),
    ]),
  )
}

/** The same, what was known before the last index of the source alone: of none of them counts what came later. */
export function pooledBefore(
  pooled: PooledByLaboratory,
  { lastKnown }: Pick<BatchesOfSource, 'lastKnown'>,
): PooledByLaboratory {
  const isEarlier = ([after]: PooledStep) => lastKnown !== null && after.day < lastKnown
  return Object.fromEntries(
    Object.entries(pooled).map(([laboratory, series]) => [
      laboratory,
      Object.fromEntries(Object.entries(series).map(([key, steps]) => [key, steps.filter(isEarlier)])),
    ]),
  )
}
