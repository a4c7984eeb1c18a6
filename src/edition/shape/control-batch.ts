/** A control batch as the core gathers it. */
import type { ControlBatch } from '../../core/doubt/batch-series.ts'
import type { ControlEntry } from './edition.ts'

export function controlBatch({ record, results }: ControlEntry): ControlBatch {
  return { cement: record.cement.lot, results }
}
