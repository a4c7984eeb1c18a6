/** Audit check: lots outside the band about the mean of the lots before them, by clause. */
import type { SourceHistory } from '../history/source-history.ts'
import type { Checked } from './checked.ts'
import { found } from './finding.ts'

/** Lots named: own choice. */
const SHOWN = 5

/**
 * One finding for each clause of uniformity that any lot lies outside of; each judged lot is a look.
 * @param source id
 * @param history of the source
 * Note: a limit is no test: what lies beyond it does, so that no flag of this check is expected by chance.
 */
export function uniformityExceeded(source: string, { uniformity }: SourceHistory): Checked {
  const findings = uniformity
    .filter(({ outside }) => 0 < outside)
    .map(({ criterion, clause, property, half, unit, outside, judged, lots }) => {
      const params = { source, clause, property, half, unit, outside, judged, lots: lots.slice(-SHOWN) }
      return found(source, { code: 'uniformity-exceeded', params }, criterion, clause)
    })
  const looked = uniformity.reduce((sum, { judged }) => sum + judged, 0)
  return { check: 'uniformity-exceeded', looked, findings }
}
