/** What the checks of a laboratory report to the sources that use it. */
import type { PropertyKey } from '../measure/properties.ts'
import type { LotOnDay } from './testing-findings.ts'

export interface LaboratoryParams {
  /** A control batch far from those before it with the same cement; `percent` of their mean. */
  readonly 'control-batch-off': {
    readonly source: string
    readonly laboratory: string
    readonly control: string
    readonly property: PropertyKey
    readonly age: string
    readonly cement: string
    readonly percent: number
    readonly batches: number
    /** Coefficient of variation between the laboratory's batches, per cent. */
    readonly scatterPercent: number
    /** Lots of the source tested beside it, null for one that is not to be named. */
    readonly lots: readonly (string | null)[]
  }
  readonly 'proficiency-open': {
    readonly source: string
    readonly laboratory: string
    readonly round: string
    readonly date: string
    readonly property: PropertyKey
    readonly z: number
  }
  /** `last` is the day of the last round; null where none is on record. */
  readonly 'proficiency-lapsed': {
    readonly source: string
    readonly laboratory: string
    readonly last: string | null
  }
  /** Tests that one laboratory took over from another; null for a lot that is not to be named. */
  readonly 'laboratory-unbridged': {
    readonly source: string
    readonly from: string
    readonly to: string
    readonly properties: readonly PropertyKey[]
    readonly first: LotOnDay | null
  }
  readonly 'cement-unbridged': {
    readonly source: string
    readonly laboratory: string
    /** Each with the first lot tested beside the later cement; null for a lot that is not to be named. */
    readonly changes: readonly (CementChange | null)[]
  }
}

/** From one control cement to the next, by their lots, and the day on which the later one was first cast. */
export interface CementChange {
  readonly from: string
  readonly to: string
  readonly on: string
  readonly lot: string
}
