/** A laboratory's control batches, and where its control cement changes. */
import { type Moment, compareMoments } from '../../core/measure/moment.ts'
import type { ControlEntry } from '../shape/edition.ts'

/** Batches of one laboratory in order of casting, then by id. */
export function batchesOf(controls: ReadonlyMap<string, ControlEntry>, laboratory: string): ControlEntry[] {
  return [...controls.values()]
    .filter((entry) => entry.record.laboratory === laboratory)
    .sort((a, b) => compareMoments(a.record.cast, b.record.cast) || (a.id < b.id ? -1 : 1))
}

/** The first batch of each cement lot, in order of casting. */
export function cementChanges(batches: readonly ControlEntry[]): { from: Moment; cement: string }[] {
  const seen = new Set<string>()
  return batches.flatMap((batch) => {
    const lot = batch.record.cement?.lot
    if (lot === undefined || seen.has(lot)) return []
    seen.add(lot)
    return [{ from: batch.record.cast, cement: lot }]
  })
}
