/** What the checks report that ask how readings and results came about. */
import type { StatedLimit } from '../criteria/limits-for-class.ts'
import type { PropertyKey } from '../measure/properties.ts'

/** A limit of the governing set and what lies within a window about its edge, values in `unit`. */
export interface LimitLooked {
  readonly criterion: string
  readonly clause: string
  readonly property: PropertyKey
  readonly condition: string | null
  readonly age: string | null
  readonly unit: string
  readonly decimals: number
  readonly limit: StatedLimit
  /** Where the outcome changes, before rounding. */
  readonly edge: number
  /** Of the window, to either side of the edge. */
  readonly width: number
  /** In the window: inside the limit, and beyond it. */
  readonly admitted: number
  readonly refused: number
}

export interface IntegrityParams {
  /** Of a source: more values just inside a limit than a density fitted away from it leads to expect. */
  readonly 'bunched-at-limit': LimitLooked & {
    readonly source: string
    readonly lots: number
    readonly expectedAdmitted: number
    readonly expectedRefused: number
    readonly probability: number
    /** Lots that were diverted, as the record says. */
    readonly diverted: number
  }
  /** Of a source: last digits of raw readings that do not occur equally often. */
  readonly 'uneven-last-digits': {
    readonly source: string
    readonly laboratory: string
    readonly unit: string
    readonly step: number
    readonly readings: number
    /** Of the digits 0 to 9. */
    readonly counts: readonly number[]
    readonly probability: number
  }
  /** Of a source: specimens of one batch that agree better than the method lets expect. */
  readonly 'scatter-small': {
    readonly source: string
    readonly laboratory: string
    readonly condition: string
    readonly batches: number
    readonly degreesOfFreedom: number
    readonly percent: number
    /** Half of what the range rule of the condition stands for. */
    readonly comparedPercent: number
    readonly probability: number
  }
  readonly 'specimens-excluded': {
    readonly source: string
    readonly excluded: number
    readonly specimens: number
    readonly listed: readonly ({ readonly lot: string; readonly reason: string } | null)[]
  }
  /** Of a source: lots judged on a later age whose earlier one, tested for most lots, is not on record. */
  /** Lots that agree in all values, null for one that is not to be named; `expected` pairs would by chance alone. */
  readonly 'lots-alike': {
    readonly source: string
    readonly lots: readonly (string | null)[]
    readonly values: readonly { readonly property: PropertyKey; readonly written: string }[]
    readonly expected: number
  }
  readonly retested: {
    readonly source: string
    readonly retests: number
    readonly tests: number
    readonly lots: number
    readonly listed: readonly (string | null)[]
  }
  readonly 'age-left-out': {
    readonly source: string
    readonly property: PropertyKey
    readonly condition: string
    readonly age: string
    readonly later: string
    readonly lots: number
    readonly of: number
    readonly listed: readonly (string | null)[]
  }
}
