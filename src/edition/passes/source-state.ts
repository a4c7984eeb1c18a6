/** Passes 1 and 2: each lot's results, then each source's history. Pass 3, judging, asks this state. */
import type { SourceBackground } from '../../core/evidence/lot-evidence.ts'
import { buildHistory, bySampling, type History } from '../../core/history/history.ts'
import { defined } from '../../core/measure/defined.ts'
import { LastUsed } from '../../core/measure/last-used.ts'
import { sourceOf } from '../../core/measure/lot-id.ts'
import { isBy, type Moment } from '../../core/measure/moment.ts'
import { once } from '../../core/measure/once.ts'
import type { Records } from '../../records/load.ts'
import type { Lot, Source } from '../../records/schema/loaded-records.ts'
import type { ControlEntry } from '../shape/edition.ts'
import { type ComputedLot, computedLot, sampledAt } from './computed-lot.ts'
import { controlEntries } from './control-entries.ts'
import {
  type BatchesOfSource,
  batchesOfSource,
  pooledBefore,
  pooledByLaboratory,
  type PooledByLaboratory,
  pooledFor,
} from './laboratory-scatter.ts'

/** A lot that nothing was computed of. */
export interface RecordedLot {
  readonly id: string
  readonly record: Lot
  readonly sampled: Moment
}

/** What stands under `lots`, `background`, `pooled` and `history` is computed when it is first asked for. */
export interface SourceState {
  readonly id: string
  readonly record: Source
  /** With the scatter that its lots were judged with. */
  readonly background: SourceBackground
  /** The scatter of its laboratories as known today, which a further lot of it is judged with. */
  readonly pooled: PooledByLaboratory
  readonly asOf: Moment
  /** In order of sampling; lots sampled after the as-of date are not among them. */
  readonly recorded: readonly RecordedLot[]
  /** The same, computed. */
  readonly lots: readonly ComputedLot[]
  /** Printed numbers of its lots whose records have a fault. */
  readonly faultyNumbers: readonly string[]
  readonly history: History
  /** Dates of the events at which a series begins anew. */
  readonly restarts: readonly Moment[]
  /** What the site prints first. */
  readonly units: 'SI' | 'US'
}

/** A lot computed before from the same record, or now. */
export type Remembered = (id: string, record: Lot, make: () => ComputedLot) => ComputedLot

/** What a source's lots tell of scatter, as kept from an earlier computation of the same lots, or made now. */
export type KeptBatches = (
  source: string,
  lots: readonly RecordedLot[],
  make: () => BatchesOfSource,
) => BatchesOfSource

export interface StatesFrom {
  /** Control batches known by the date, where the caller has them already. */
  readonly controls?: ReadonlyMap<string, ControlEntry>
  readonly computed?: Remembered
  readonly batches?: KeptBatches
  /** Lots whose results are held at once, all without it: those of a source that was let go are computed again. */
  readonly heldLots?: number
}

/** What is computed of all lots of a source. */
interface ComputedLots {
  readonly inOrderOfRecords: readonly ComputedLot[]
  readonly bySampling: readonly ComputedLot[]
  readonly history: () => History
}

/**
 * Computes every lot of a source once, and its history from them, when they are first asked for.
 * @param records lots whose sources are on record
 * @param asOf calendar date; lots sampled later are left out
 * @returns by source id, sources without lots among them
 */
export function sourceStates(
  records: Records,
  asOf: Moment,
  {
    controls = controlEntries(records, asOf),
    computed = (_id, _record, make) => make(),
    batches = (_source, _lots, make) => make(),
    heldLots = Number.POSITIVE_INFINITY,
  }: StatesFrom = {},
): Map<string, SourceState> {
  const onRecord = lotsOnRecord(records, asOf)
  const compute = ({ id, record }: RecordedLot) =>
    computed(id, record, () => computedLot(id, record, records, asOf))
  const held = new LastUsed<ComputedLots>(heldLots)
  const sources = [...records.sources].map(([id, record]) => {
    const recorded = onRecord.get(id) ?? []
    const bySamplingTime = recorded.toSorted(bySampling)
    const restarts = restartsOf(record, asOf)
    const lots = () => held.of(id, lotsIn, () => computedLots(recorded, bySamplingTime, restarts, compute))
    const own = once(() =>
      batches(id, bySamplingTime, () => batchesOfSource(lots().inOrderOfRecords, lots().bySampling)),
    )
    return { id, record, restarts, recorded: bySamplingTime, lots, own }
  })
  const pooled = once(() =>
    pooledByLaboratory(
      controls.values(),
      sources.map(({ own }) => own()),
    ),
  )
  return new Map(
    sources.map(({ id, record, restarts, recorded, lots, own }) => {
      const pooledNow = once(() => pooledFor(pooled(), own()))
      const background = once(() => ({
        ...backgroundOf(record, records),
        pooled: pooledBefore(pooledNow(), own()),
      }))
      const state: SourceState = {
        id,
        record,
        recorded,
        asOf,
        restarts,
        units: records.site.units,
        faultyNumbers: numbersIn(id, records),
        get lots() {
          return lots().bySampling
        },
        get background() {
          return background()
        },
        get pooled() {
          return pooledNow()
        },
        get history() {
          return lots().history()
        },
      }
      return [id, state]
    }),
  )
}

function lotsIn({ bySampling: lots }: ComputedLots): number {
  return lots.length
}

/** @param bySamplingTime the same lots as `recorded` */
function computedLots(
  recorded: readonly RecordedLot[],
  bySamplingTime: readonly RecordedLot[],
  restarts: readonly Moment[],
  compute: (lot: RecordedLot) => ComputedLot,
): ComputedLots {
  const byId = new Map(recorded.map((lot) => [lot.id, compute(lot)]))
  const lots = bySamplingTime.map((lot) => byId.get(lot.id) as ComputedLot)
  return {
    inOrderOfRecords: [...byId.values()],
    bySampling: lots,
    history: once(() => buildHistory(lots, restarts)),
  }
}

/** Every lot sampled by the date, in the order of the records, by source. */
function lotsOnRecord(records: Records, asOf: Moment): Map<string, RecordedLot[]> {
  const recorded = [...records.lots].flatMap(([id, record]): RecordedLot[] => {
    const sampled = sampledAt(record)
    return isBy(sampled, asOf) ? [{ id, record, sampled }] : []
  })
  return Map.groupBy(recorded, ({ id }) => sourceOf(id))
}

function numbersIn(source: string, { faultyNumbers }: Records): string[] {
  return [...faultyNumbers].flatMap(([lot, number]) => (sourceOf(lot) === source ? [number] : []))
}

function restartsOf({ events = [] }: Source, asOf: Moment): Moment[] {
  return events
    .filter((event) => event['restarts-series'] === 'yes' && isBy(event.date, asOf))
    .map((event) => event.date)
}

function backgroundOf(source: Source, records: Records): SourceBackground {
  const own = (source.criteria ?? []).flatMap(({ set, requested }) =>
    requested === undefined ? [] : [[set, requested] as const],
  )
  return defined({
    kind: source.kind,
    declared: source.declared,
    facts: source.facts,
    documents: source.documents,
    approvals: source.approvals ?? [],
    events: source.events ?? [],
    classUnder: source['class-under'],
    requested: { ...records.site.requested, ...Object.fromEntries(own) },
    repeatability: Object.fromEntries(
      [...records.laboratories].flatMap(([id, { repeatability }]) =>
        repeatability === undefined ? [] : [[id, repeatability] as const],
      ),
    ),
  })
}
