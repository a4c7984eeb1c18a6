/** Passes 1 and 2: each lot's results, then each source's history. Pass 3, judging, asks this state. */
import type { Criterion } from '../../core/criteria/criterion.ts'
import { buildHistory, bySampling, type History } from '../../core/history/history.ts'
import { bestClass, judge } from '../../core/judging/verdict.ts'
import { lotEvidence, type LotBackground, type SourceBackground } from '../../core/evidence/lot-evidence.ts'
import { nameInSource, sourceOf } from '../../core/measure/lot-id.ts'
import { dateOf, inForce } from '../../core/measure/moment.ts'
import type { PlannedTest, UnmadeResult } from '../../core/result/result.ts'
import type { Records } from '../../records/load.ts'
import type { Lot, Source } from '../../records/schema/loaded-records.ts'
import type { JudgedLot } from '../certificate/certificate.ts'
import { controlEntries } from './control-entries.ts'
import { pooledByLaboratory, pooledFor } from './laboratory-scatter.ts'
import { conditionTitle } from '../views/condition-title.ts'
import { lotHistory } from '../certificate/lot-history.ts'
import { resultsOfLot } from './lot-results.ts'

export interface ComputedLot extends LotBackground {
  readonly record: Lot
  readonly unmade: readonly UnmadeResult[]
  readonly planned: readonly PlannedTest[]
}

export interface SourceState {
  readonly id: string
  readonly record: Source
  readonly background: SourceBackground
  readonly asOf: string
  /** In order of sampling; lots sampled after the as-of date are not among them. */
  readonly lots: readonly ComputedLot[]
  readonly history: History
  /** Dates of the events at which a series begins anew. */
  readonly restarts: readonly string[]
}

/** Sampling time that orders a lot in its history: end of the producer's first sample, else of production. */
export function sampledAt(lot: Lot): string {
  const sample = lot.samples.find((candidate) => candidate.kind === 'composite' || candidate.kind === 'grab')
  return sample?.taken?.to ?? sample?.on ?? lot.produced.to
}

/** Date of the withdrawal in force on a date; undefined where the newest revision does not withdraw. */
export function withdrawnOn(lot: Lot, asOf: string): string | undefined {
  const last = lot.revisions?.filter((revision) => revision.date <= asOf).at(-1)
  return last?.withdrawn === 'yes' ? last.date : undefined
}

/**
 * Computes every lot of the records once, and each source's history from them.
 * @param controls control batches known by the date, where the caller has them already
 */
export function sourceStates(
  records: Records,
  asOf: string,
  controls = controlEntries(records, asOf),
): Map<string, SourceState> {
  const bySource = new Map<string, ComputedLot[]>([...records.sources.keys()].map((id) => [id, []]))
  for (const [id, record] of records.lots) {
    const sampled = sampledAt(record)
    if (asOf < dateOf(sampled)) continue
    const sourceId = sourceOf(id)
    const withdrawn = withdrawnOn(record, asOf)
    bySource.get(sourceId)?.push({
      id,
      sampled,
      record,
      class: record.class ?? records.sources.get(sourceId)?.class ?? null,
      tonnes: record.quantity.value,
      from: record.produced.from,
      ...resultsOfLot(id, record, records, asOf),
      ...(withdrawn === undefined ? {} : { withdrawn }),
      ...ofLot(record),
    })
  }
  const pooled = pooledByLaboratory(controls.values(), [...bySource.values()].flat())
  return new Map(
    [...bySource].flatMap(([id, lots]) => {
      const record = records.sources.get(id)
      if (record === undefined) return []
      const ordered = lots.sort(bySampling)
      const restarts = (record.events ?? [])
        .filter((event) => event['restarts-series'] === 'yes' && event.date <= asOf)
        .map((event) => event.date)
      return [
        [
          id,
          {
            id,
            record,
            background: {
              ...backgroundOf(record, records),
              pooled: pooledFor(
                pooled,
                ordered.flatMap((lot) => lot.results),
              ),
            },
            asOf,
            lots: ordered,
            history: buildHistory(ordered, restarts),
            restarts,
          },
        ] as const,
      ]
    }),
  )
}

function ofLot({
  'class-under': classUnder,
  facts,
  documents,
}: Lot): Pick<LotBackground, 'classUnder' | 'facts' | 'documents'> {
  return {
    ...(classUnder === undefined ? {} : { classUnder }),
    ...(facts === undefined ? {} : { facts }),
    ...(documents === undefined ? {} : { documents }),
  }
}

function backgroundOf(source: Source, records: Records): SourceBackground {
  const own = (source.criteria ?? []).flatMap(({ set, requested }) =>
    requested === undefined ? [] : [[set, requested] as const],
  )
  return {
    kind: source.kind,
    ...(source.declared === undefined ? {} : { declared: source.declared }),
    ...(source.facts === undefined ? {} : { facts: source.facts }),
    ...(source.documents === undefined ? {} : { documents: source.documents }),
    approvals: source.approvals ?? [],
    events: source.events ?? [],
    ...(source['class-under'] === undefined ? {} : { classUnder: source['class-under'] }),
    requested: { ...records.site.requested, ...Object.fromEntries(own) },
    repeatability: Object.fromEntries(
      [...records.laboratories].flatMap(([id, { repeatability }]) =>
        repeatability === undefined ? [] : [[id, repeatability] as const],
      ),
    ),
  }
}

/** The criteria in force for a lot whose kinds of material apply, the governing one first. */
export function criteriaFor(records: Records, source: Source, lot: Lot): Criterion[] {
  const produced = dateOf(lot.produced.to)
  const ids =
    source.criteria === undefined
      ? records.site.criteria
      : source.criteria.filter((entry) => inForce(entry, produced)).map((entry) => entry.set)
  return ids
    .map((id) => records.criteria.get(id))
    .filter((criterion) => criterion !== undefined)
    .filter((criterion) => criterion.kinds.some((kind) => kind === source.kind))
}

/**
 * Pass 3 for one lot on one date.
 * @param state the source's state, computed at a date not earlier than `asOf`
 * @param place the lot's place in `state.lots`
 * @param asOf calendar date; readings taken later are still planned then
 */
export function judgeLot(records: Records, state: SourceState, place: number, asOf: string): JudgedLot {
  const lot = state.lots[place]
  if (lot === undefined)
    throw new RangeError(`judgeLot needs a place among ${state.lots.length} lots, got ${place}`)
  const { results, unmade, planned } =
    asOf === state.asOf ? lot : resultsOfLot(lot.id, lot.record, records, asOf)
  const criteria = criteriaFor(records, state.record, lot.record)
  const evidence = lotEvidence(
    state.background,
    state.history,
    lot,
    { results, unmade, planned },
    { asOf, conditionTitle: (id) => conditionTitle(records, id) },
  )
  return {
    id: lot.id,
    record: lot.record,
    class: lot.class,
    number: lot.record.number ?? nameInSource(lot.id),
    asOf,
    results,
    planned,
    criteria,
    verdicts: criteria.map((criterion) => judge(criterion, evidence)),
    bestClass: (id) => {
      const criterion = criteria.find((candidate) => candidate.id === id)
      return criterion === undefined ? null : bestClass(criterion, evidence)
    },
    get history() {
      return lotHistory(state.lots, place, { results, planned }, asOf)
    },
  }
}
