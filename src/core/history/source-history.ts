/**
 * What the history of a source says on a day: its series, and what statistics of them show. Plain data: whoever
 * prints it words it.
 */
import type { Age } from '../measure/age.ts'
import type { Duty } from '../measure/duty.ts'
import type { Moment } from '../measure/moment.ts'
import type { PropertyKey } from '../measure/properties.ts'
import type { Bounds } from '../result/bounds.ts'
import type { ResultReason } from '../result/reason.ts'
import type { Shown, TInterval } from './not-shown.ts'
import type {
  AgainstControl,
  Correlation,
  EwmaChart,
  IndividualsChart,
  Margin,
  MonthEffects,
  Projection,
  Scatter,
  Slope,
  StepFigures,
} from './segment-figures.ts'

export interface SourceHistory {
  readonly asOf: Moment
  /** In the order of the page: what governs first. */
  readonly series: readonly SourceSeries[]
  /** Which series stands closest to its limit. */
  readonly closest: Shown<Closest>
  /** How many lots lay outside the band about the mean of the preceding ones; one for each clause. */
  readonly uniformity: readonly UniformityCount[]
  /** A later age foretold from an earlier one. */
  readonly predictions: readonly AgePrediction[]
}

/** Results of one property, condition, age, method, class and duty of samples: none of these ever mix. */
export interface SourceSeries {
  /** Unique in the source: `historyKey` with the duty, and stable. */
  readonly key: string
  readonly property: PropertyKey
  readonly condition?: string
  readonly age?: Age
  readonly method?: string
  readonly duty: Duty
  /** Class claimed by its lots. */
  readonly class: string | null
  readonly unit: string
  readonly decimals: number
  /** What the governing criterion of the newest lot admits of a single result; none where it sets no limit. */
  readonly limits: readonly SeriesLimit[]
  /** In order of sampling. */
  readonly points: readonly HistoryPoint[]
  /** Points that may be compared with each other, in order of their first; each valid point is in one of them. */
  readonly segments: readonly Segment[]
  /** Of the whole series, across segments. */
  readonly steps: readonly Step[]
  /** Of the whole series, each segment about its own mean. */
  readonly months: Shown<MonthEffects>
}

export interface HistoryPoint {
  /** Place in the series, from 0: what segments and signals refer to. */
  readonly place: number
  /** In the unit of the series; null for a pending one, and for a test that gave no value. */
  readonly value: number | null
  /** Where the value is known only within bounds. */
  readonly bounds?: Bounds
  readonly status: 'valid' | 'not-valid' | 'pending' | 'withdrawn'
  /** Where it comes from; null of a lot that is not shown, whose value stands bare. */
  readonly named: PointOrigin | null
}

export interface PointOrigin {
  /** SOURCE/LOT */
  readonly lot: string
  /** Mark of the sample within the lot. */
  readonly sample: string
  /** When the sample was complete. */
  readonly sampled: Moment
  readonly laboratory: string
  /** Control batch of an index. */
  readonly control?: string
  /** Lot of the control's cement. */
  readonly cement?: string
  /** Day on which it was known as it is, since 1970-01-01; absent while pending. */
  readonly knownDay?: number
  /** When a pending result is due, and since when it is overdue. */
  readonly due?: Moment
  readonly overdueSince?: Moment
  /** Why it is not valid, or what was noted about it. */
  readonly reasons: readonly ResultReason[]
}

/** Limits of one clause on a single result, as ends of what is admitted before rounding. */
export interface SeriesLimit {
  readonly criterion: string
  readonly clause: string
  /** In the unit of the series; null on an open side. */
  readonly low: number | null
  readonly high: number | null
  /** "75 %", "at least" and "at most" by `operator`. */
  readonly written: readonly string[]
  readonly operator: 'at-least' | 'at-most' | 'above' | 'below' | 'between' | 'magnitude-at-most'
}

/** Points of one laboratory and of control cements that paired batches join, after one and the same restart. */
export interface Segment {
  /** Valid points, in order. */
  readonly places: readonly number[]
  readonly laboratory: string
  /** Lots of control cement, in order of their first point; none where no control is behind the results. */
  readonly cements: readonly string[]
  /** Why it is a segment of its own. */
  readonly begins: 'first' | 'laboratory' | 'control-cement' | 'restart'
  readonly chart: Shown<IndividualsChart>
  readonly ewma: Shown<EwmaChart>
  /** Moving average of five, from the fifth point on. */
  readonly movingAverage: readonly { readonly place: number; readonly value: number }[]
  readonly correlation: Shown<Correlation>
  readonly scatter: Shown<Scatter>
  /** One for each limit of the series. */
  readonly margins: readonly Margin[]
  readonly slope: Shown<Slope>
  readonly projection: Shown<Projection>
  /** Correlation of an index with the level of its control, over batches. */
  readonly againstControl: Shown<AgainstControl>
}

/** Means before and after an event of the source, or a change of laboratory or control cement. */
export interface Step {
  readonly event: StepEvent
  readonly figures: Shown<StepFigures>
}

export type StepEvent =
  | { readonly by: 'event'; readonly date: Moment; readonly title: string; readonly kind: string }
  | { readonly by: 'laboratory'; readonly date: Moment | null; readonly from: string; readonly to: string }
  | {
      readonly by: 'control-cement'
      readonly date: Moment | null
      readonly from: string
      readonly to: string
    }

export interface Closest {
  /** Key of the series. */
  readonly series: string
  /** Segment of it, and which of its margins. */
  readonly segment: number
  readonly margin: number
}

export interface UniformityCount {
  readonly criterion: string
  readonly clause: string
  readonly property: PropertyKey
  /** Half width of the band about the mean, with its unit: per cent of the mean, or points. */
  readonly half: number
  readonly unit: string
  readonly outside: number
  readonly judged: number
  /** Lots outside, oldest first; null for one that is not shown. */
  readonly lots: readonly (string | null)[]
}

/** The later age of an index or a strength from an earlier one, over pairs of one laboratory. */
export interface AgePrediction {
  readonly property: PropertyKey
  readonly condition: string
  readonly from: Age
  readonly to: Age
  readonly class: string | null
  readonly laboratory: string
  readonly fit: Shown<AgeFit>
}

export interface AgeFit {
  readonly pairs: number
  readonly intercept: number
  readonly slope: number
  /** Of residuals. */
  readonly standardDeviation: number
  readonly r: number
  /** Lots whose later result is awaited. */
  readonly open: readonly PredictedLot[]
}

export interface PredictedLot {
  readonly lot: string
  readonly early: number
  readonly predicted: number
  readonly interval: TInterval
  /** The early result lies outside those of the pairs. */
  readonly extrapolated: boolean
}
