/** Audit check: the share of results close to a limit, or beyond it, grows. */
import type { SourceHistory } from '../history/source-history.ts'
import { CHECKS } from './catalogue.ts'
import type { Checked } from './checked.ts'
import { found } from './finding.ts'
import { governedSegments, ofSegment } from './governed-series.ts'

/**
 * One look and at most one finding for each segment and limit.
 * @param source id
 * @param history of the source
 */
export function marginsShrinking(source: string, { series }: SourceHistory): Checked {
  const looks = governedSegments(series).flatMap((governed) =>
    governed.segment.margins.flatMap((margin) =>
      margin.growth.shown ? [{ governed, margin, growth: margin.growth }] : [],
    ),
  )
  const findings = looks.flatMap(({ governed, margin, growth: { before, after, p } }) => {
    if ((CHECKS['margin-shrinking'].rate ?? 0) <= p) return []
    const { criterion, clause } = margin.limit
    const stated = governed.series.limits.find((one) => one.criterion === criterion && one.clause === clause)
    if (stated === undefined) return []
    const limit = { operator: stated.operator, written: stated.written }
    const params = { ...ofSegment(source, governed), limit, before, after, p }
    return [found(source, { code: 'margin-shrinking', params }, ...governed.place, clause, margin.side)]
  })
  return { check: 'margin-shrinking', looked: looks.length, findings }
}
