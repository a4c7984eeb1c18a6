/** A source's balance, shipments and certified lots as the audit checks ask for them. */
import type { KeptBalance } from '../../core/checks/balance-kept.ts'
import { sum } from '../../core/statistics/descriptive.ts'
import { balanceRows } from '../shape/balance.ts'
import type { LotEntry, ShipmentEntry } from '../shape/edition.ts'
import type { SourceState } from './source-state.ts'

/** @param several shipments that may have come from several lots */
export function keptBalance(
  { id: source, record }: SourceState,
  lots: readonly LotEntry[],
  several: readonly ShipmentEntry[],
): KeptBalance {
  const balanced = lots.map(({ state, record: lot }) => ({ state, record: lot, tonnes: lot.quantity.value }))
  return {
    source,
    rows: balanceRows(record, balanced),
    ledger: record.diverted === undefined ? 'not-kept' : 'kept',
    shippedT: sum([...lots.flatMap(({ shipments }) => shipments), ...several].map(({ massT }) => massT)),
    certifiedT: sum(balanced.filter(({ state }) => state !== 'draft').map(({ tonnes }) => tonnes)),
  }
}
