/** A source of the Edition, but for its history and what the checks say of it. */
import { atTheLimits } from '../../core/checks/at-the-limits.ts'
import { once } from '../../core/measure/once.ts'
import type { Records } from '../../records/load.ts'
import type { LotEntry, SourceEntry } from '../shape/edition.ts'
import { agencyOf } from './agency.ts'
import { sourceSeries } from './series.ts'
import type { SourceState } from './source-state.ts'

/** @param lots of the source, in order of sampling */
export function sourceEntry(
  state: SourceState,
  lots: readonly LotEntry[],
  records: Records,
): Omit<SourceEntry, 'history' | 'findings' | 'checks' | 'auditOf'> {
  return {
    id: state.id,
    record: state.record,
    series: sourceSeries(state),
    criteria: governingFirst(lots),
    background: state.background,
    restarts: state.restarts,
    unpublished: 0,
    faultyNumbers: state.faultyNumbers,
    agency: agencyOf(state.record, lots, { records, asOf: state.asOf }),
    atLimits: atLimitsOf(lots),
  }
}

/** For all lots they are counted once. */
function atLimitsOf(lots: readonly LotEntry[]): SourceEntry['atLimits'] {
  const whole = once(() => atTheLimits(lots))
  return (isShown) => (isShown === undefined ? whole() : atTheLimits(lots.filter(({ id }) => isShown(id))))
}

/** In the order of the newest lot's criteria, then those that only earlier lots were judged under. */
function governingFirst(lots: readonly LotEntry[]): string[] {
  const judgedUnder = (lot: LotEntry) => lot.verdicts.map(({ criterion }) => criterion)
  return [...new Set([...lots.slice(-1), ...lots].flatMap(judgedUnder))]
}
