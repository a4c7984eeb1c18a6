/** What stood for a lot in its history, day by day. */
import { defined } from '../measure/defined.ts'
import { boundsOf, extentOf, isBounded } from '../result/bounds.ts'
import { duplicatesOf } from '../result/duplicates.ts'
import { type Observation, standsOn } from '../result/observation.ts'
import type { PrecedingResult } from '../result/result.ts'
import type { HistoryLot } from './history.ts'
import { representative } from './representative.ts'

/** What stood for a lot under one key from one day, since 1970-01-01, to the next that is listed. */
export interface Standing {
  readonly from: number
  /** Absent where nothing that stood counts. */
  readonly result?: PrecedingResult
}

/**
 * What stood for a lot from each day on which anything changed.
 * @param observations of one key
 * @returns in order of their days
 */
export function standingsOf(lot: HistoryLot, observations: readonly Observation[]): Standing[] {
  const days = new Set(observations.flatMap(({ from, until = from }) => [from, until]))
  return [...days]
    .sort((a, b) => a - b)
    .map((day) => ({ from: day, ...defined({ result: resultStanding(lot, observations, day) }) }))
}

function resultStanding(
  { id, sampled }: HistoryLot,
  observations: readonly Observation[],
  day: number,
): PrecedingResult | undefined {
  const results = observations.filter((one) => standsOn(one, day)).map(({ result }) => result)
  const result = representative(results)
  if (result === undefined || !result.valid) return undefined
  const bounds = isBounded(result) ? boundsOf(extentOf(result)) : undefined
  const duplicates = duplicatesOf(result, results)
  return { lot: id, sampled, value: result.value, ...defined({ bounds, duplicates }) }
}
