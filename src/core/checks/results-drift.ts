/** Audit check: results that rise or fall over the newest lots, by a slope whose interval leaves out zero. */
import type { SourceHistory } from '../history/source-history.ts'
import type { Checked } from './checked.ts'
import { found } from './finding.ts'
import { governedSegments, lotAt, ofSegment } from './governed-series.ts'

/**
 * One look and at most one finding for each segment that has a slope.
 * @param source id
 * @param history of the source
 * @returns findings with the place at which the line meets a limit, where the history projects that far
 */
export function resultsDrift(source: string, { series }: SourceHistory): Checked {
  const looks = governedSegments(series).flatMap((governed) =>
    governed.segment.slope.shown ? [{ governed, slope: governed.segment.slope }] : [],
  )
  const findings = looks
    .filter(({ slope }) => slope.clear)
    .map(({ governed, slope }) => {
      const { projection } = governed.segment
      const params = {
        ...ofSegment(source, governed),
        n: slope.n,
        perTenLots: slope.perTenLots,
        low: slope.interval.low,
        high: slope.interval.high,
        since: lotAt(governed.series, slope.from),
        limit: projection.shown ? { end: projection.end, lotsAhead: projection.lotsAhead } : null,
      }
      return found(source, { code: 'results-drift', params }, ...governed.place)
    })
  return { check: 'results-drift', looked: looks.length, findings }
}
