/** Passes 1 and 2: each lot's results, then each source's history. Pass 3, judging, asks this state. */
import type { SourceBackground } from '../../core/evidence/lot-evidence.ts'
import { buildHistory, bySampling, type History } from '../../core/history/history.ts'
import { defined } from '../../core/measure/defined.ts'
import { sourceOf } from '../../core/measure/lot-id.ts'
import { isBy, type Moment } from '../../core/measure/moment.ts'
import { observationsOf } from '../../core/result/observation.ts'
import type { Records } from '../../records/load.ts'
import type { Lot, Source } from '../../records/schema/loaded-records.ts'
import type { ControlEntry } from '../shape/edition.ts'
import { type ComputedLot, computedLot, sampledAt } from './computed-lot.ts'
import { controlEntries } from './control-entries.ts'
import { pooledByLaboratory, pooledFor } from './laboratory-scatter.ts'

export interface SourceState {
  readonly id: string
  readonly record: Source
  readonly background: SourceBackground
  readonly asOf: Moment
  /** In order of sampling; lots sampled after the as-of date are not among them. */
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

/**
 * Computes every lot of the records once, and each source's history from them.
 * @param records lots whose sources are on record
 * @param asOf calendar date; lots sampled later are left out
 * @param made control batches known by the date, where the caller has them already, and lots computed before
 * @returns by source id, sources without lots among them
 */
export function sourceStates(
  records: Records,
  asOf: Moment,
  {
    controls = controlEntries(records, asOf),
    computed = (_id, _record, make) => make(),
  }: { readonly controls?: ReadonlyMap<string, ControlEntry>; readonly computed?: Remembered } = {},
): Map<string, SourceState> {
  const bySource = computedLots(records, asOf, computed)
  const pooled = pooledByLaboratory(controls.values(), [...bySource.values()].flat())
  return new Map(
    [...records.sources].map(([id, record]) => {
      const lots = (bySource.get(id) ?? []).sort(bySampling)
      const results = lots.flatMap((lot) => observationsOf(lot).map(({ result }) => result))
      const restarts = restartsOf(record, asOf)
      const background = { ...backgroundOf(record, records), pooled: pooledFor(pooled, results) }
      const history = buildHistory(lots, restarts)
      const { units } = records.site
      const faultyNumbers = numbersIn(id, records)
      return [id, { id, record, background, asOf, lots, faultyNumbers, history, restarts, units }]
    }),
  )
}

/** Pass 1: every lot sampled by the date, in the order of the records, by source on record. */
function computedLots(records: Records, asOf: Moment, computed: Remembered): Map<string, ComputedLot[]> {
  const bySource = new Map<string, ComputedLot[]>([...records.sources.keys()].map((id) => [id, []]))
  for (const [id, record] of records.lots)
    if (isBy(sampledAt(record), asOf))
      bySource.get(sourceOf(id))?.push(computed(id, record, () => computedLot(id, record, records, asOf)))
  return bySource
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
