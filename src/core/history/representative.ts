/** Which of several results of one test stands for a lot. */
import { dutyOf } from '../measure/duty.ts'
import { compareMoments } from '../measure/moment.ts'
import { byTest } from '../result/by-test.ts'
import type { Result } from '../result/result.ts'

/**
 * The one result that stands for the lot in its history: valid before not valid, a composite before a regular sample,
 * then the latest.
 * @param results in any order
 * @returns undefined for no result
 */
export function representative(results: readonly Result[]): Result | undefined {
  let best: Result | undefined
  for (const result of results) if (best === undefined || standsBefore(result, best)) best = result
  return best
}

function standsBefore(one: Result, other: Result): boolean {
  const byRank = rank(one) - rank(other) || compareMoments(one.tested, other.tested)
  // Of two of one moment the first by what else they state.
  return byRank === 0 ? byTest(one, other) < 0 : 0 < byRank
}

function rank(result: Result): number {
  return (result.valid ? 2 : 0) + (dutyOf(result) === 'composite' ? 1 : 0)
}
