/** All figures of a segment. */
import { movingAverages } from '../statistics/moving-average.ts'
import type { ComparableGroup } from './comparable-points.ts'
import { controlCharts, type Phase } from './control-charts.ts'
import { marginsOf, scatterOf } from './segment-margins.ts'
import { againstControl, correlationOf, projectionOf, slopeOf } from './segment-trend.ts'
import type { Segment, SeriesLimit } from './source-history.ts'

/** Results that the moving average takes in: ASTM C917 (from memory). */
const MOVING = 5

export interface SegmentContext {
  readonly limits: readonly SeriesLimit[]
  /** Declared for the property. */
  readonly phases: readonly Phase[]
  /** Days on which material was diverted without a result of the property, since 1970-01-01. */
  readonly divertedWithoutResults: readonly number[]
}

/** What statistics say of points that may be compared with each other: at least one. */
export function segmentOf({ points, begins }: ComparableGroup, context: SegmentContext): Segment {
  const correlation = correlationOf(points)
  const slope = slopeOf(points)
  const { chart, ewma } = controlCharts(points, context.phases)
  const [first, last] = [points[0]?.sampled.day ?? 0, points.at(-1)?.sampled.day ?? 0]
  const diverted = context.divertedWithoutResults.filter((day) => first <= day && day <= last).length
  return {
    places: points.map(({ place }) => place),
    laboratory: points[0]?.laboratory ?? '',
    cements: [...new Set(points.flatMap(({ cement }) => cement ?? []))],
    begins,
    chart,
    ewma,
    movingAverage: points.some(({ bounded }) => bounded)
      ? []
      : movingAverages(
          points.map(({ value }) => value),
          MOVING,
        ).map(({ at, value }) => ({ place: points[at]?.place ?? at, value })),
    correlation,
    scatter: scatterOf(points),
    margins: marginsOf(points, context.limits, { chart, correlation, divertedWithoutResults: diverted }),
    slope,
    projection: projectionOf(points, slope, context.limits),
    againstControl: againstControl(points),
  }
}
