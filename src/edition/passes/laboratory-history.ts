/** The control batches of a laboratory with their charts, and which of its cements are joined. */
import { CEMENT_NOT_RECORDED } from '../../words/laboratory-records.ts'
import type { Bridge } from '../../core/history/comparable-points.ts'
import { controlBatchSeries } from '../../core/history/control-batch-history.ts'
import type { LaboratoryHistory } from '../../core/history/laboratory-history.ts'
import { compareMoments } from '../../core/measure/moment.ts'
import type { Laboratory } from '../../records/schema/loaded-records.ts'
import type { ControlEntry } from '../shape/edition.ts'

type Controls = ReadonlyMap<string, ControlEntry>

/**
 * Cements that paired batches join: one pair at least has results by the date of the controls.
 * @param controls known by a date
 */
export function knownBridges(laboratories: ReadonlyMap<string, Laboratory>, controls: Controls): Bridge[] {
  const isMade = (id: string) => controls.get(id)?.results.some(({ valid }) => valid) === true
  return [...laboratories].flatMap(([laboratory, record]) =>
    (record['cement-bridges'] ?? [])
      .filter(({ pairs }) => pairs.some(({ earlier, later }) => isMade(earlier) && isMade(later)))
      .map(({ from, to }) => ({ laboratory, from, to })),
  )
}

/** @param bridges of any laboratories */
export function laboratoryHistory(
  laboratory: string,
  controls: Controls,
  bridges: readonly Bridge[],
): LaboratoryHistory {
  const batches = [...controls.values()]
    .filter(({ record }) => record.laboratory === laboratory)
    .map(({ id, record, results }) => ({
      id,
      laboratory,
      cast: record.cast,
      cement: record.cement?.lot ?? CEMENT_NOT_RECORDED,
      results,
    }))
    .sort((a, b) => compareMoments(a.cast, b.cast) || (a.id < b.id ? -1 : 1))
  return { laboratory, series: controlBatchSeries(batches, bridges) }
}
