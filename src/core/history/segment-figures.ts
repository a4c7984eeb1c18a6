/** What statistics say of points that may be compared with each other. Plain data: whoever prints it words it. */
import type { Moment } from '../measure/moment.ts'
import type { WatchedRule } from '../statistics/chart-signals.ts'
import type { Shown, TInterval } from './not-shown.ts'
import type { SeriesLimit, StepEvent } from './source-history.ts'

/** Which points set centre and limits. */
export interface Baseline {
  /** A phase declared in the record, the first stretch of points, or all while they are few. */
  readonly by: 'phase' | 'first-points' | 'all-points'
  /** Title of the phase. */
  readonly title?: string
  readonly places: readonly number[]
}

export type RunRule =
  | 'beyond-limits'
  | 'run-of-eight'
  | 'six-rising-or-falling'
  | 'two-of-three'
  | 'moving-range'
  | 'ewma'
  | 'cusum'

export interface Signal {
  readonly rule: RunRule
  /** Point at which the rule first holds. */
  readonly place: number
  /** All points that it rests on. */
  readonly places: readonly number[]
  readonly side: 'high' | 'low' | null
}

export interface IndividualsChart {
  readonly baseline: Baseline
  readonly centre: number
  /** Mean moving range over 1.128. */
  readonly sigma: number
  readonly low: number
  readonly high: number
  readonly meanMovingRange: number
  readonly movingRangeHigh: number
  /** Of all rules, in order of place. */
  readonly signals: readonly Signal[]
  /** How often each rule signals without any cause. */
  readonly falseAlarms: readonly FalseAlarm[]
  /** How far each rule was carried, beside how far chance seldom carries it. */
  readonly held: readonly RuleHeld[]
}

/** A rule over a whole segment, held against series without any cause of its correlation, baseline and length. */
export interface RuleHeld {
  readonly rule: WatchedRule
  /** Points at which it holds: each beyond a limit, and each of a run from its eighth on, of a rise from its sixth. */
  readonly places: readonly number[]
  /** How far it was carried: points, or how far averages or sums went (`extentsWithin`). */
  readonly extent: number
  /** What chance seldom reaches, and the share of simulated series that reach it. */
  readonly limit: number
  readonly share: number
  readonly tooMany: boolean
  readonly phi: number
}

/** Simulated for a series like this one: its correlation, its baseline and the number of points watched. */
export interface FalseAlarm {
  readonly rule: RunRule
  /** Share of points that signal; for a run, that end one. */
  readonly perPoint: number
  /** Share of such series with one signal at least. */
  readonly inSeries: number
  /** Correlation of neighbours that was simulated. */
  readonly phi: number
  /** Points that set the limits, and points watched. */
  readonly baseline: number
  readonly watched: number
  readonly simulated: true
}

export interface EwmaChart {
  readonly lambda: number
  /** Width in standard deviations of the statistic. */
  readonly width: number
  /** One for each point of the segment, with its own limits. */
  readonly points: readonly {
    readonly place: number
    readonly value: number
    readonly low: number
    readonly high: number
  }[]
  /** What the limits tend to. */
  readonly steady: { readonly low: number; readonly high: number }
}

/** How far neighbouring results are alike. */
export interface Correlation {
  /** Of neighbours, lag 1, from the points themselves. */
  readonly lag1: number
  readonly n: number
  /** Independent results that the mean of the points is worth. */
  readonly effectiveN: number
  /** Groups of lots that share a control batch; as many as points where none do. */
  readonly clusters: number
}

export interface Scatter {
  readonly n: number
  readonly mean: number
  /** Of all points, overall. */
  readonly standardDeviation: number
  /** From the moving range, too small where neighbours are alike. */
  readonly movingRangeSigma: number
  /** What is left of the scatter without the error of testing. */
  readonly withinSource: Shown<WithinSource>
}

export interface WithinSource {
  readonly testing: number
  readonly corrected: number
  readonly from: 'duplicates' | 'stated-repeatability'
  /** Pairs of duplicates; 0 where stated. */
  readonly pairs: number
}

/** How far the points stand from a limit. */
export interface Margin {
  readonly limit: Pick<SeriesLimit, 'criterion' | 'clause'>
  readonly side: 'low' | 'high'
  /** Where the outcome changes, before rounding. */
  readonly end: number
  /** Of the newest valid point: above zero inside the limit. */
  readonly last: { readonly place: number; readonly margin: number }
  readonly smallest: { readonly place: number; readonly margin: number }
  /** Mean of all margins, and that in overall standard deviations; null without a standard deviation. */
  readonly mean: number
  readonly inDeviations: number | null
  /** Points within one standard deviation of the limit, on either side. */
  readonly near: number
  readonly n: number
  /** Whether more of the newer half lie close to the limit than of the older one. */
  readonly growth: Shown<NearGrowth>
  readonly capability: Shown<Capability>
}

/** Batches within one standard deviation of a limit, or beyond it, in the older and the newer half of a segment. */
export interface NearGrowth {
  readonly before: { readonly near: number; readonly n: number }
  readonly after: { readonly near: number; readonly n: number }
  /** One-sided: by chance so many more would lie there in the newer half. */
  readonly p: number
}

/** One-sided, by the overall standard deviation. */
export interface Capability {
  /** Distance of the mean from the end over three standard deviations (Ppk, one side). */
  readonly index: number
  readonly interval: TInterval
  /** Estimated share of results inside the limit, per cent. */
  readonly percentWithin: number
  /** Minimum-variance unbiased, by the symmetric beta distribution. */
  readonly estimator: 'unbiased-beta'
  readonly n: number
  /** Points worth as much as independent ones, which the interval takes in place of n; the share takes n. */
  readonly effectiveN: number
}

export interface Slope {
  /** Change of the fitted line over ten points, in the unit of the series, with its interval. */
  readonly perTenLots: number
  readonly interval: TInterval
  readonly n: number
  readonly effectiveN: number
  /** First and last place fitted. */
  readonly from: number
  readonly to: number
  readonly since: Moment | null
  /** Whether the interval leaves out zero. */
  readonly clear: boolean
}

export interface Projection {
  readonly limit: Pick<SeriesLimit, 'criterion' | 'clause'>
  readonly side: 'low' | 'high'
  readonly end: number
  /** Points after the last at which the line meets the end of the limit. */
  readonly lotsAhead: number
}

export interface StepFigures {
  readonly before: { readonly n: number; readonly mean: number }
  readonly after: { readonly n: number; readonly mean: number }
  /** After less before. */
  readonly difference: number
  readonly interval: TInterval
  /** The interval leaves out zero. */
  readonly clear: boolean
  /** What else changed between the two stretches. */
  readonly alsoChanged: readonly ('laboratory' | 'control-cement')[]
  /** Other events and changes so close that the results between are too few to tell them apart, in order. */
  readonly beside: readonly StepEvent[]
}

export interface MonthEffects {
  readonly months: readonly MonthEffect[]
}

export interface MonthEffect {
  /** 1 for January. */
  readonly month: number
  readonly n: number
  /** Mean of the month's results less the mean of all others. */
  readonly difference: number
  readonly interval: TInterval
  readonly clear: boolean
}

export interface AgainstControl {
  readonly r: number
  /** Two-sided, that no correlation would give one as strong. */
  readonly p: number
  /** Control batches: lots of one batch are one pair. */
  readonly batches: number
}

/** Two-sided, in standard deviations from the centre. */
export interface CusumChart {
  readonly reference: number
  readonly decision: number
  readonly points: readonly { readonly place: number; readonly high: number; readonly low: number }[]
}
