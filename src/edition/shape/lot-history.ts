/** The lot's own activity results with those of lots before it, as a short chart draws them. */
import type { Result } from '../../core/result/result.ts'

export interface HistorySeries {
  readonly property: Result['property']
  readonly condition?: string
  readonly age?: string
  readonly unit: string
  readonly decimals: number
  /** Oldest first, this lot last. */
  readonly points: readonly {
    /** Place of the lot in the order of sampling. */
    readonly place: number
    /** The lot and its sampling; null for a lot that is not to be named, whose value alone is shown. */
    readonly named: { readonly lot: string; readonly at: string } | null
    readonly value: number | null
    readonly status: 'valid' | 'not-valid' | 'pending'
  }[]
}

/** One series for each activity index and condition, at its latest age. */
export type LotHistory = readonly HistorySeries[]
