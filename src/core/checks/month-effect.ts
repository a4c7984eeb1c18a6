/** Audit check: months of the calendar whose results differ from those of all others. */
import type { SourceHistory } from '../history/source-history.ts'
import type { Checked } from './checked.ts'
import { found } from './finding.ts'
import { governedSeries, ofSeries, placeOf } from './governed-series.ts'

/**
 * One look and at most one finding for each series that has month effects.
 * @param source id
 * @param history of the source
 */
export function monthsApart(source: string, { series }: SourceHistory): Checked {
  const looks = governedSeries(series).flatMap((one) =>
    one.months.shown ? [{ one, months: one.months.months }] : [],
  )
  const findings = looks.flatMap(({ one, months }) => {
    const clear = months
      .filter((month) => month.clear)
      .map(({ month, n, difference, interval: { low, high } }) => ({ month, n, difference, low, high }))
    if (clear.length === 0) return []
    const n = one.segments.reduce((sum, { places }) => sum + places.length, 0)
    const params = { ...ofSeries(source, one, n), months: clear }
    return [found(source, { code: 'month-effect', params }, ...placeOf(one))]
  })
  return { check: 'month-effect', looked: looks.length, findings }
}
