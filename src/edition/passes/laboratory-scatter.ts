/** Pass 2 for laboratories: the scatter between their batches, as it was known on each day. */
import { batchSeries, type TestedLot } from '../../core/doubt/batch-series.ts'
import {
  pooledKey,
  type PooledStep,
  pooledSteps,
  repeatedKey,
} from '../../core/doubt/pooled-repeatability.ts'
import { RATIO_OF } from '../../core/measure/ratio-indices.ts'
import { knownSince, type Result } from '../../core/result/result.ts'
import { type HistoryLot, resultsOn } from '../../core/history/history.ts'
import { isBy, type Moment, momentOfDay, readMoment } from '../../core/measure/moment.ts'
import { controlResults } from '../../core/readings/control-results.ts'
import { disruptiveDaysOfControl } from '../../core/readings/disruptive-days.ts'
import { firstAtOrAfter } from '../../core/statistics/first-at-or-after.ts'
import type { Records } from '../../records/records.ts'
import { controlBatch } from '../shape/control-batch.ts'
import type { ControlEntry } from '../shape/edition.ts'

export type PooledByLaboratory = Readonly<Record<string, Readonly<Record<string, readonly PooledStep[]>>>>

/** What the laboratories' batches have taught, for the date of a question. */
export interface LaboratoryScatter {
  /** As known on the last day that can be asked for. */
  readonly today: PooledByLaboratory
  readonly on: (asOf: Moment) => PooledByLaboratory
}

/**
 * What each laboratory's batches have taught by each day.
 * @param controls as known on the date
 * @param lots as known on it, with their earlier results where those changed
 */
export function laboratoryScatter(
  records: Records,
  controls: ReadonlyMap<string, ControlEntry>,
  lots: readonly HistoryLot[],
  asOf: Moment,
): LaboratoryScatter {
  const today = pooled([...controls.values()], lots)
  const changes = changesOf(controls, lots, asOf)
  const kept = new Map<number, PooledByLaboratory>()
  return {
    today,
    on: (date) => {
      // Until the next change more is only added, and what was tested later teaches nothing of an earlier test.
      const next = changes[firstAtOrAfter(changes, (day) => day, date.day + 1)]
      if (next === undefined) return today
      const before = kept.get(next) ?? pooledOn(records, controls, lots, momentOfDay(next - 1))
      kept.set(next, before)
      return before
    },
  }
}

/** Days on which a batch changed or became known late, in order. */
function changesOf(
  controls: ReadonlyMap<string, ControlEntry>,
  lots: readonly HistoryLot[],
  asOf: Moment,
): number[] {
  const ofControls = [...controls.values()].flatMap(({ record }) => disruptiveDaysOfControl(record, asOf))
  const ofLots = lots.flatMap(({ before = [], results }) => [
    ...before.map(({ until }) => until),
    ...results.flatMap(({ known }) => known?.day ?? []),
  ])
  return [...new Set([...ofControls, ...ofLots])].sort((a, b) => a - b)
}

function pooledOn(
  records: Records,
  controls: ReadonlyMap<string, ControlEntry>,
  lots: readonly HistoryLot[],
  asOf: Moment,
): PooledByLaboratory {
  const then = [...controls.values()].map((entry) => {
    const { id, record, results } = entry
    const condition = records.conditions.get(record.condition)
    const changed = condition !== undefined && disruptiveDaysOfControl(record, LAST_DAY).length > 0
    return {
      ...entry,
      results: changed
        ? controlResults({ id, control: record, condition, asOf })
        : results.filter((result) => isBy(knownSince(result), asOf)),
    }
  })
  return pooled(
    then,
    lots.map((lot) => ({ id: lot.id, results: resultsOn(lot, asOf) })),
  )
}

/** Every day on record lies before it. */
const LAST_DAY = readMoment('9999-12-31')

function pooled(controls: readonly ControlEntry[], lots: Iterable<TestedLot>): PooledByLaboratory {
  const gathered = batchSeries(controls.map(controlBatch), lots)
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
