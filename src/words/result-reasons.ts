/** Why a result does not count, or what was noted about it, in words. */
import type { Result } from '../core/result/result.ts'

/** One sentence without a full stop. */
export function resultReasonWords(reason: Result['reasons'][number]): string {
  return reason
}
