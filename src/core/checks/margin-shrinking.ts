/** Audit check: the share of results close to a limit, or beyond it, grows. */
import type { Shown } from '../history/not-shown.ts'
import type { NearGrowth } from '../history/segment-figures.ts'
import type { SourceHistory } from '../history/source-history.ts'
import type { Checked } from './checked.ts'
import { found } from './finding.ts'
import { governedSegments, ofSegment } from './governed-series.ts'

/** One-sided: own choice. */
const LEVEL = 0.05
/** Fewer close to a limit show no growth, and are no look: own choice. */
const FEWEST = 5

/**
 * One look and at most one finding for each segment and limit that results lie close to.
 * @param source id
 * @param history of the source
 */
export function marginsShrinking(source: string, { series }: SourceHistory): Checked {
  const looks = governedSegments(series).flatMap((governed) =>
    governed.segment.margins.flatMap((margin) =>
      isLooked(margin.growth) ? [{ governed, margin, growth: margin.growth }] : [],
    ),
  )
  const findings = looks.flatMap(({ governed, margin, growth: { before, after, p } }) => {
    if (LEVEL <= p) return []
    const { criterion, clause } = margin.limit
    const stated = governed.series.limits.find((one) => one.criterion === criterion && one.clause === clause)
    if (stated === undefined) return []
    const limit = { operator: stated.operator, written: stated.written }
    const params = { ...ofSegment(source, governed), limit, before, after, p }
    return [found(source, { code: 'margin-shrinking', params }, ...governed.place, clause, margin.side)]
  })
  return { check: 'margin-shrinking', looked: looks.length, findings }
}

function isLooked(growth: Shown<NearGrowth>): growth is Shown<NearGrowth> & { readonly shown: true } {
  return growth.shown && FEWEST <= growth.before.near + growth.after.near
}
