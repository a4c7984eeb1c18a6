/** A figure of a reference test as it is printed. */
import { written } from '../../../../words/as-written.ts'
import { CURVE_SIDES, measureText } from '../../../../words/reference-tests.ts'
import type { ReferenceResult } from '../../../shape/reference-result.ts'

/** "318 J/g"; a reported figure as it was written; the side of the curve for a point. */
export function referenceText(result: ReferenceResult): string {
  if (result.from === 'reported') return written(result.stated)
  const { found } = result
  return found.test === 'pozzolanicity'
    ? CURVE_SIDES[found.found.side]
    : measureText(found.found.value, found.test)
}
