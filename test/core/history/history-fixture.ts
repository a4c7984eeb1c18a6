/** Histories made from points, as the passes make them from records. */
import { comparableGroups, type ComparablePoint } from '../../../src/core/history/comparable-points.ts'
import { type SourceEvent, stepsOf } from '../../../src/core/history/event-steps.ts'
import { monthEffects } from '../../../src/core/history/month-effects.ts'
import { segmentOf } from '../../../src/core/history/segment.ts'
import type {
  HistoryPoint,
  SeriesLimit,
  SourceHistory,
  SourceSeries,
} from '../../../src/core/history/source-history.ts'
import type { Age } from '../../../src/core/measure/age.ts'
import { property, type PropertyKey } from '../../../src/core/measure/properties.ts'

interface Followed {
  readonly source?: string
  readonly property?: PropertyKey
  readonly condition?: string
  readonly age?: Age
  readonly limits?: readonly SeriesLimit[]
  readonly events?: readonly SourceEvent[]
}

/** "At least 75 %", met from 74.5 % on. */
export const AT_LEAST_75: SeriesLimit = {
  criterion: 'c618',
  clause: 'activity',
  low: 74.5,
  high: null,
  written: ['75 %'],
  operator: 'at-least',
}

/** Lots of points are "source/place". */
export function seriesOf(
  points: readonly ComparablePoint[],
  {
    source = 'vale',
    property: key = 'strength-activity-index',
    condition,
    age,
    limits = [AT_LEAST_75],
    events = [],
  }: Followed = {},
): SourceSeries {
  const groups = comparableGroups(points, [], [])
  const context = { limits, phases: [], divertedWithoutResults: [] }
  return {
    key: [key, condition, age?.text].join('|'),
    property: key,
    ...(condition === undefined ? {} : { condition }),
    ...(age === undefined ? {} : { age }),
    duty: 'composite',
    class: null,
    unit: '%',
    decimals: property(key).decimals,
    limits,
    points: points.map((point) => pointOf(source, point)),
    segments: groups.map((group) => segmentOf(group, context)),
    steps: stepsOf(points, events),
    months: monthEffects(groups),
  }
}

function pointOf(source: string, { place, value, sampled, laboratory }: ComparablePoint): HistoryPoint {
  const named = { lot: `${source}/${place}`, sample: 'C', sampled, laboratory, reasons: [] }
  return { place, value, status: 'valid', named }
}

export function historyOf(
  series: readonly SourceSeries[],
  uniformity: SourceHistory['uniformity'] = [],
): SourceHistory {
  const [first] = series[0]?.points ?? []
  return {
    asOf: first?.named?.sampled ?? { text: '2026-01-01', day: 20_454 },
    series,
    closest: { shown: false, reason: { code: 'no-limit', params: {} } },
    uniformity,
    predictions: [],
  } as unknown as SourceHistory
}
