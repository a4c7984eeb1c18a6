/** Passes 1 and 2: each lot's results, then each source's history. Pass 3, judging, asks this state. */
import type { LotBackground, SourceBackground } from '../../core/evidence/lot-evidence.ts'
import { requestedBy } from '../../core/evidence/requested.ts'
import { buildHistory, bySampling, type History } from '../../core/history/history.ts'
import { defined } from '../../core/measure/defined.ts'
import type { Duty } from '../../core/measure/duty.ts'
import { sourceOf } from '../../core/measure/lot-id.ts'
import { earliestOf, isBy, type Moment } from '../../core/measure/moment.ts'
import { endsOfSampling, regularSamples } from '../../core/mortar/regular-samples.ts'
import { observationsOf } from '../../core/result/observation.ts'
import type { PlannedTest, UnmadeResult } from '../../core/result/result.ts'
import type { Records } from '../../records/load.ts'
import type { Lot, Source } from '../../records/schema/loaded-records.ts'
import { controlEntries } from './control-entries.ts'
import { pooledByLaboratory, pooledFor } from './laboratory-scatter.ts'
import { resultsOverTime } from './lot-results.ts'

export interface ComputedLot extends LotBackground {
  readonly record: Lot
  readonly unmade: readonly UnmadeResult[]
  readonly planned: readonly PlannedTest[]
}

export interface SourceState {
  readonly id: string
  readonly record: Source
  readonly background: SourceBackground
  readonly asOf: Moment
  /** In order of sampling; lots sampled after the as-of date are not among them. */
  readonly lots: readonly ComputedLot[]
  readonly history: History
  /** Dates of the events at which a series begins anew. */
  readonly restarts: readonly Moment[]
  /** What the site prints first. */
  readonly units: 'SI' | 'US'
}

/**
 * Sampling time that orders a lot in its history: end of the producer's first composite, without one of the first
 * regular sample, else of production.
 */
export function sampledAt({ samples, produced }: Lot): Moment {
  const ends = (duty: Duty) => endsOfSampling(samples, duty).map(([, end]) => end)
  return earliestOf(ends('composite')) ?? earliestOf(ends('regular')) ?? produced.to
}

/** Where the lot was withdrawn by the date; a later line on it, which only corrects the first, changes nothing. */
function withdrawal({ revisions = [] }: Lot, asOf: Moment): Pick<LotBackground, 'withdrawn'> {
  const line = revisions.find(({ withdrawn, date }) => withdrawn === 'yes' && isBy(date, asOf))
  return line === undefined ? {} : { withdrawn: line.date }
}

/**
 * Computes every lot of the records once, and each source's history from them.
 * @param records lots whose sources are on record
 * @param asOf calendar date; lots sampled later are left out
 * @param controls control batches known by the date, where the caller has them already
 * @returns by source id, sources without lots among them
 */
export function sourceStates(
  records: Records,
  asOf: Moment,
  controls = controlEntries(records, asOf),
): Map<string, SourceState> {
  const bySource = computedLots(records, asOf)
  const pooled = pooledByLaboratory(controls.values(), [...bySource.values()].flat())
  return new Map(
    [...records.sources].map(([id, record]) => {
      const lots = (bySource.get(id) ?? []).sort(bySampling)
      const results = lots.flatMap((lot) => observationsOf(lot).map(({ result }) => result))
      const restarts = restartsOf(record, asOf)
      const background = { ...backgroundOf(record, records), pooled: pooledFor(pooled, results) }
      const history = buildHistory(lots, restarts)
      return [id, { id, record, background, asOf, lots, history, restarts, units: records.site.units }]
    }),
  )
}

/** Pass 1: every lot sampled by the date, in the order of the records, by source on record. */
function computedLots(records: Records, asOf: Moment): Map<string, ComputedLot[]> {
  const bySource = new Map<string, ComputedLot[]>([...records.sources.keys()].map((id) => [id, []]))
  for (const [id, record] of records.lots)
    if (isBy(sampledAt(record), asOf))
      bySource.get(sourceOf(id))?.push(computedLot(id, record, records, asOf))
  return bySource
}

function computedLot(id: string, record: Lot, records: Records, asOf: Moment): ComputedLot {
  return {
    id,
    sampled: sampledAt(record),
    record,
    class: record.class ?? records.sources.get(sourceOf(id))?.class ?? null,
    tonnes: record.quantity.value,
    from: record.produced.from,
    ...resultsOverTime(id, record, records, asOf),
    ...withdrawal(record, asOf),
    ...defined({ takenAt: regularSamples(record) }),
    ...ofLot(record),
  }
}

function restartsOf({ events = [] }: Source, asOf: Moment): Moment[] {
  return events
    .filter((event) => event['restarts-series'] === 'yes' && isBy(event.date, asOf))
    .map((event) => event.date)
}

function ofLot(record: Lot): Pick<LotBackground, 'classUnder' | 'facts' | 'documents' | 'requested'> {
  return defined({
    requested: record.criteria && requestedBy(record.criteria),
    classUnder: record['class-under'],
    facts: record.facts,
    documents: record.documents,
  })
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
