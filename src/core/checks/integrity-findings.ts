/** What the checks of integrity report of a source. */
import type { PropertyKey } from '../measure/properties.ts'

/** Bins of the window's width from the edge on, in the order of the values; `expected` by the fitted distribution. */
export type LimitHistogram = readonly {
  readonly from: number
  readonly to: number
  readonly count: number
  readonly expected: number
}[]

/** How results lie about the edge of a limit, in the unit of the results. */
export interface AtLimit {
  readonly n: number
  readonly edge: number
  /** Width on either side of the edge. */
  readonly window: number
  readonly justInside: number
  /** Of the results that fail or lie just inside, so many are expected just inside. */
  readonly expectedInside: number
  readonly justOutside: number
  /** Chance of at least so many just inside. */
  readonly p: number
  readonly histogram: LimitHistogram
}

export interface IntegrityParams {
  /** `diverted` counts the diversions that the source has on record. */
  readonly 'bunched-at-limit': AtLimit & {
    readonly source: string
    readonly criterion: string
    readonly clause: string
    readonly property: PropertyKey | null
    readonly unit: string
    readonly decimals: number
    readonly diverted: number
  }
}
