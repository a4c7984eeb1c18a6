/** Pass 3: one lot, judged on a date under the criteria in force for it. */
import type { Criterion } from '../../core/criteria/criterion.ts'
import type { Verdict } from '../../core/criteria/verdict.ts'
import type { Evidence } from '../../core/evidence/evidence.ts'
import { requestedTogether } from '../../core/evidence/requested.ts'
import { lotEvidence } from '../../core/evidence/lot-evidence.ts'
import { type BestClass, bestClass, judge } from '../../core/judging/verdict.ts'
import { nameInSource } from '../../core/measure/lot-id.ts'
import type { Moment } from '../../core/measure/moment.ts'
import type { PlannedTest, Result } from '../../core/result/result.ts'
import type { Records } from '../../records/load.ts'
import type { Lot } from '../../records/schema/loaded-records.ts'
import type { LotHistory } from '../shape/lot-history.ts'
import { criteriaOfLot } from './criteria-of-lot.ts'
import { lotHistory } from './lot-history.ts'
import { resultsOfLot } from './lot-results.ts'
import type { SourceState } from './source-state.ts'

/** A lot as judged on a date. */
export interface JudgedLot {
  readonly id: string
  readonly record: Lot
  readonly class: string | null
  readonly number: string
  readonly asOf: Moment
  readonly results: readonly Result[]
  readonly planned: readonly PlannedTest[]
  readonly criteria: readonly Criterion[]
  /** Ids of those among them that nothing but the project of a shipment asks for. */
  readonly ofProjects: readonly string[]
  readonly verdicts: readonly Verdict[]
  readonly history: LotHistory
  readonly bestClass: (criterion: string) => BestClass | null
}

/**
 * Judges one lot as of one date.
 * @param state the source's state, computed at a date not earlier than `asOf`
 * @param place the lot's place in `state.lots`
 * @param asOf calendar date; readings taken later are still planned then
 * @throws RangeError for a place that holds no lot
 */
export function judgeLot(records: Records, state: SourceState, place: number, asOf: Moment): JudgedLot {
  const lot = state.lots[place]
  if (lot === undefined)
    throw new RangeError(`judgeLot needs a place among ${state.lots.length} lots, got ${place}`)
  const known = asOf.day === state.asOf.day ? lot : resultsOfLot(lot.id, lot.record, records, asOf)
  const { results, unmade, planned } = known
  const { criteria, ofProjects, requested } = criteriaOfLot(records, state.record, [lot.id, lot.record], asOf)
  const asked = { ...lot, requested: requestedTogether(lot.requested ?? {}, requested) }
  const evidence = lotEvidence(state.background, state.history, asked, { results, unmade, planned }, asOf)
  return {
    id: lot.id,
    record: lot.record,
    class: lot.class,
    number: lot.record.number ?? nameInSource(lot.id),
    asOf,
    results,
    planned,
    criteria,
    ofProjects,
    verdicts: criteria.map((criterion) => judge(criterion, evidence)),
    bestClass: (id) => bestClassUnder(criteria, id, evidence),
    get history() {
      return lotHistory(state.lots, place, { results, planned }, asOf)
    },
  }
}

function bestClassUnder(criteria: readonly Criterion[], id: string, evidence: Evidence): BestClass | null {
  const criterion = criteria.find((candidate) => candidate.id === id)
  return criterion === undefined ? null : bestClass(criterion, evidence)
}
