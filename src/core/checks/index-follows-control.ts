/** Audit check: an index that is high where its control is low, since a weak control inflates an index. */
import type { SourceHistory } from '../history/source-history.ts'
import { CHECKS } from './catalogue.ts'
import type { Checked } from './checked.ts'
import { found } from './finding.ts'
import { governedSegments, ofSegment } from './governed-series.ts'

/**
 * One look and at most one finding for each segment with enough control batches.
 * @param source id
 * @param history of the source
 * Note: only a falling relation is asked about, so that half of the two-sided chance counts.
 */
export function indexFollowsControl(source: string, { series }: SourceHistory): Checked {
  const looks = governedSegments(series).flatMap((governed) =>
    governed.segment.againstControl.shown ? [{ governed, with: governed.segment.againstControl }] : [],
  )
  const findings = looks.flatMap(({ governed, with: { r, p, batches } }) => {
    if (0 <= r || (CHECKS['index-follows-control'].rate ?? 0) <= p / 2) return []
    const params = { ...ofSegment(source, governed), r, p, batches }
    return [found(source, { code: 'index-follows-control', params }, ...governed.place)]
  })
  return { check: 'index-follows-control', looked: looks.length, findings }
}
