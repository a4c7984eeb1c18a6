/** What the checks that hold every lot of a site against all others say of a source. */
import type { Checked } from '../../core/checks/checked.ts'
import type { Records } from '../../records/records.ts'
import { byDateAndBill } from '../shape/shipment-order.ts'
import { type AuditIndex, lotAmongAll } from './audit.ts'
import { sourceAmongAll } from './audit-source.ts'
import { type SharedShipments, shipmentsOf } from './shipments.ts'
import type { SourceState } from './source-state.ts'

export interface FoundBeside {
  /** Of its lots, by place. */
  readonly lots: readonly (readonly Checked[])[]
  /** Of what it lists itself. */
  readonly source: readonly Checked[]
}

/** Made from the records alone, before any lot is judged. */
export function foundBeside(
  state: SourceState,
  { several, ofOne }: SharedShipments,
  records: Records,
  index: AuditIndex,
): FoundBeside {
  return {
    lots: state.recorded.map(({ id, record }) => {
      const shipments = [...shipmentsOf(id, record, state.asOf), ...ofOne(id)].sort(byDateAndBill)
      return lotAmongAll({ id, record, shipments }, records, index)
    }),
    source: sourceAmongAll(state, several, index),
  }
}
