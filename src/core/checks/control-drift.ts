/** Audit check: a control mortar that drifts, by the cumulative sum of its batches. It concerns a laboratory. */
import type { ControlBatchSeries, ControlSegment, LaboratoryHistory } from '../history/laboratory-history.ts'
import type { RuleHeld } from '../history/segment-figures.ts'
import type { Checked } from './checked.ts'
import { AS_ESTIMATED } from './control-chart.ts'
import { type Finding, found } from './finding.ts'

/**
 * One look and at most one finding for each segment of the laboratory's control batches.
 * @param history of the laboratory
 * @returns findings about the laboratory, not about each source that it tests for
 */
export function controlDrift({ laboratory, series }: LaboratoryHistory): Checked {
  const looks = series.flatMap((one) =>
    one.segments.flatMap((segment, at) => {
      const { chart } = segment
      if (!chart.shown) return []
      const held = chart.held.filter(({ rule }) => rule === 'cusum')
      return held.map((sum) => ({ one, segment, held: sum, at, centre: chart.centre }))
    }),
  )
  return {
    check: 'control-drift',
    looked: looks.length,
    expected: AS_ESTIMATED * looks.reduce((sum, { held }) => sum + held.share, 0),
    findings: looks
      .filter(({ held }) => held.tooMany)
      .map(({ one, at, ...of }) => findingOf(laboratory, one, at, of)),
  }
}

function findingOf(
  laboratory: string,
  { property, condition, age, unit, decimals }: ControlBatchSeries,
  at: number,
  {
    segment,
    held,
    centre,
  }: {
    readonly segment: ControlSegment
    readonly held: RuleHeld
    readonly centre: number
  },
): Finding {
  const { places, extent, limit, share, phi } = held
  const last = segment.movingAverage.at(-1)
  const params = {
    ...{ laboratory, property, condition, age: age.text, unit, decimals, centre },
    ...{ batches: segment.places.length, held: places.length, extent, limit, share, correlation: phi },
    percent: last === undefined ? null : 100 * (last.value / centre - 1),
  }
  const place = [property, condition, age.text, ...(at === 0 ? [] : [String(at + 1)])]
  return found(laboratory, { code: 'control-drift', params }, ...place)
}
