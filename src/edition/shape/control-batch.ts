/** A control batch as the core gathers it. */
import type { ControlBatch } from '../../core/doubt/batch-series.ts'
import type { ControlEntry } from './edition.ts'

/** A batch whose cement lot is not on record is one of a kind: it shows no scatter about others of its cement. */
export function controlBatch({ id, record, results }: ControlEntry): ControlBatch {
  return { cement: record.cement?.lot ?? `of ${id}`, results }
}
