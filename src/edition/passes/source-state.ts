/** Passes 1 and 2: each lot's results, then each source's history. Pass 3, judging, asks this state. */
import type { LotBackground, SourceBackground } from '../../core/evidence/lot-evidence.ts'
import { buildHistory, bySampling, type History } from '../../core/history/history.ts'
import { defined } from '../../core/measure/defined.ts'
import { sourceOf } from '../../core/measure/lot-id.ts'
import { isBy, type Moment } from '../../core/measure/moment.ts'
import type { PlannedTest, UnmadeResult } from '../../core/result/result.ts'
import type { Records } from '../../records/load.ts'
import type { Lot, Source } from '../../records/schema/loaded-records.ts'
import { controlEntries } from './control-entries.ts'
import { laboratoryScatter, pooledFor } from './laboratory-scatter.ts'
import { resultsBefore, resultsOfLot } from './lot-results.ts'

export interface ComputedLot extends LotBackground {
  readonly record: Lot
  readonly unmade: readonly UnmadeResult[]
  readonly planned: readonly PlannedTest[]
}

export interface SourceState {
  readonly id: string
  readonly record: Source
  readonly background: SourceBackground
  /** The same as it was known on an earlier date. */
  readonly backgroundOn: (date: Moment) => SourceBackground
  readonly asOf: Moment
  /** In order of sampling; lots sampled after the as-of date are not among them. */
  readonly lots: readonly ComputedLot[]
  readonly history: History
  /** Dates of the events at which a series begins anew. */
  readonly restarts: readonly Moment[]
}

/** Sampling time that orders a lot in its history: end of the producer's first sample, else of production. */
export function sampledAt(lot: Lot): Moment {
  const sample = lot.samples.find((candidate) => candidate.kind === 'composite' || candidate.kind === 'grab')
  return sample?.taken?.to ?? sample?.on ?? lot.produced.to
}

/** Date of the withdrawal in force on a date; undefined where the newest revision does not withdraw. */
export function withdrawnOn(lot: Lot, asOf: Moment): Moment | undefined {
  const last = lot.revisions?.filter((revision) => isBy(revision.date, asOf)).at(-1)
  return last?.withdrawn === 'yes' ? last.date : undefined
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
  const scatter = laboratoryScatter(records, controls, [...bySource.values()].flat(), asOf)
  return new Map(
    [...records.sources].map(([id, record]) => {
      const lots = (bySource.get(id) ?? []).sort(bySampling)
      const results = lots.flatMap((lot) => lot.results)
      const restarts = restartsOf(record, asOf)
      const background = { ...backgroundOf(record, records), pooled: pooledFor(scatter.today, results) }
      const history = buildHistory(lots, restarts)
      const backgroundOn = (date: Moment): SourceBackground => {
        const pooled = scatter.on(date)
        return pooled === scatter.today ? background : { ...background, pooled }
      }
      return [id, { id, record, background, backgroundOn, asOf, lots, history, restarts }]
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
    ...resultsOfLot(id, record, records, asOf),
    ...defined({ before: resultsBefore(id, record, records, asOf), withdrawn: withdrawnOn(record, asOf) }),
    ...ofLot(record),
  }
}

function restartsOf({ events = [] }: Source, asOf: Moment): Moment[] {
  return events
    .filter((event) => event['restarts-series'] === 'yes' && isBy(event.date, asOf))
    .map((event) => event.date)
}

function ofLot(record: Lot): Pick<LotBackground, 'classUnder' | 'facts' | 'documents'> {
  return defined({
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
