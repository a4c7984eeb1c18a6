/** What the checks of a laboratory report to the sources that use it. */
import type { PropertyKey } from '../measure/properties.ts'

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
  readonly 'cement-unbridged': {
    readonly source: string
    readonly laboratory: string
    readonly changes: readonly { readonly from: string; readonly to: string; readonly on: string }[]
  }
}
