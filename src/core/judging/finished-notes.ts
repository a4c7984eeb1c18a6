/** What a judgement must say of results that their laboratories reported finished. */
import type { AddedReason } from '../criteria/reason.ts'
import { property } from '../measure/properties.ts'
import { stepOfDecimals, withoutDust } from '../measure/rounding.ts'
import type { Result } from '../result/result.ts'
import { type ClauseJudgement, withReason } from './judged-clause.ts'

/**
 * The judgement with a note where a finished figure was judged, or stands among others, or is written too coarsely
 * for its limit.
 * @param results that counted, at least one
 */
export function withFinishedNotes(judged: ClauseJudgement, results: readonly Result[]): ClauseJudgement {
  return notesOn(judged, results).reduce(withReason, judged)
}

function notesOn(judged: ClauseJudgement, results: readonly Result[]): AddedReason[] {
  const finished = results.filter((result) => result.finished === true)
  if (finished.length === 0) return []
  if (finished.length < results.length)
    return [{ code: 'finished-among', params: { finished: finished.length, n: results.length } }]
  const own = finished.find(({ key, value }) => key === judged.result && value === judged.value)
  return [{ code: 'finished', params: {} }, ...(own === undefined ? [] : tooCoarse(judged, own))]
}

/**
 * A figure written in whole per cents stands for half of one either way, which matters where a limit lies in
 * between. Rounding may have gone either way, so both ends belong to it.
 */
function tooCoarse(
  { limit }: ClauseJudgement,
  { property: key, value, unit, decimals }: Result,
): AddedReason[] {
  if (property(key).nature !== 'index' || limit === null || limit === undefined) return []
  const half = stepOfDecimals(decimals) / 2
  const [low, high] = [withoutDust(value - half), withoutDust(value + half)]
  if (!limit.values.some((end) => low <= end && end <= high)) return []
  return [{ code: 'finished-near-limit', params: { low, high, decimals: decimals + 1, unit } }]
}
