/** What the checks report that read the history of a source, or of a laboratory's control mortar. */
import type { StatedLimit } from '../criteria/limits-for-class.ts'
import type { Figure } from '../criteria/reason.ts'
import type { PropertyKey } from '../measure/properties.ts'
import type { LotOnDay } from './testing-findings.ts'

/** Results of a source that are followed together, in `unit`. */
export interface OfSeries {
  readonly source: string
  readonly property: PropertyKey
  readonly condition: string | null
  readonly age: string | null
  readonly unit: string
  readonly decimals: number
  /** Results looked at. */
  readonly n: number
}

/** Results that may be compared with each other: of one laboratory. */
export interface OfSegment extends OfSeries {
  readonly laboratory: string
}

/** Points at which a rule of the control chart holds, and how far it was carried beside how far chance seldom does. */
export interface OnChart extends OfSegment {
  readonly held: number
  /** Of a weighted average in its own standard deviations, else points. */
  readonly extent: number
  readonly limit: number
  /** Of simulated series without any cause that reach the limit. */
  readonly share: number
  /** Of neighbours, as simulated. */
  readonly correlation: number
  readonly centre: number
  readonly low: number
  readonly high: number
  /** Results that set centre and limits. */
  readonly baseline: number
  /** The newest lots at which it holds, null for one that is not to be named, and of how many. */
  readonly lots: readonly (string | null)[]
  readonly ofLots: number
}

export interface MeanOf {
  readonly n: number
  readonly mean: number
}

/** A difference with its 95 % interval. */
export interface Apart {
  readonly difference: number
  readonly low: number
  readonly high: number
}

export interface HistoryParams {
  readonly 'out-of-control': OnChart
  readonly 'run-on-one-side': OnChart
  readonly 'steady-rise-or-fall': OnChart
  readonly 'weighted-average-off': OnChart
  /** The slope over ten lots with its interval, and where the line leads if that is not far. */
  readonly 'results-drift': OfSegment & {
    readonly perTenLots: number
    readonly low: number
    readonly high: number
    readonly since: LotOnDay | null
    readonly limit: { readonly end: number; readonly lotsAhead: number } | null
  }
  readonly 'step-at-event': OfSeries &
    Apart & {
      readonly event: EventOrChange['event']
      readonly change: EventOrChange['change']
      /** So close that the results cannot tell them apart from it. */
      readonly beside: readonly EventOrChange[]
      readonly before: MeanOf
      readonly after: MeanOf
      readonly alsoChanged: readonly ChangeOf[]
    }
  readonly 'month-effect': OfSeries & {
    /** 1 for January. */
    readonly months: readonly (Apart & { readonly month: number; readonly n: number })[]
  }
  /** Results within one standard deviation of a limit, or beyond it. */
  readonly 'margin-shrinking': OfSegment & {
    readonly limit: StatedLimit
    readonly before: CountOf
    readonly after: CountOf
    readonly p: number
  }
  /** A clause by variables: the mean of the control period up to the newest lot, less or plus `factor` deviations. */
  readonly 'period-estimate-beyond': {
    readonly source: string
    /** The newest with an estimate; null for one that is not to be named. */
    readonly lot: string | null
    readonly clause: string
    readonly property: PropertyKey
    readonly condition: string | null
    readonly age: string | null
    readonly value: number
    readonly unit: string
    readonly decimals: number
    readonly limit: StatedLimit
    readonly n: number
    readonly mean: Figure
    readonly standardDeviation: Figure
    readonly factor: number
  }
  readonly 'uniformity-exceeded': {
    readonly source: string
    readonly clause: string
    readonly property: PropertyKey
    readonly half: number
    readonly unit: string
    readonly outside: number
    readonly judged: number
    /** The newest of them. */
    readonly lots: readonly (string | null)[]
  }
  readonly 'index-follows-control': OfSegment & {
    readonly r: number
    readonly p: number
    readonly batches: number
  }
  /** Of a laboratory: the cumulative sum of its control mortar. `percent` is the newest average of five from the centre. */
  readonly 'control-drift': {
    readonly laboratory: string
    readonly property: PropertyKey
    readonly condition: string
    readonly age: string
    readonly batches: number
    readonly held: number
    /** Largest sum, in standard deviations of single batches. */
    readonly extent: number
    readonly limit: number
    readonly share: number
    readonly correlation: number
    readonly centre: number
    readonly unit: string
    readonly decimals: number
    readonly percent: number | null
  }
}

export interface EventOrChange {
  /** Of the source's record. */
  readonly event: { readonly title: string; readonly date: string } | null
  /** Of laboratory or control cement, with the first lot after it; null for one that is not to be named. */
  readonly change: (LotOnDay & { readonly by: ChangeOf; readonly from: string; readonly to: string }) | null
}

export type ChangeOf = 'laboratory' | 'control-cement'

export interface CountOf {
  readonly near: number
  readonly n: number
}
