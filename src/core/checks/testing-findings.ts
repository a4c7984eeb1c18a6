/** What the checks report that hold samples and tests against days of the laboratory and of production. */
import type { PropertyKey } from '../measure/properties.ts'

/** A lot with the days that are compared. */
export interface LotOnDay {
  readonly lot: string
  readonly day: string
}

export interface TestingParams {
  /** Of a source: results that its governing verdicts rest on. `recorded` is whether any accreditation is on record. */
  readonly 'tested-outside-accreditation': {
    readonly source: string
    readonly laboratory: string
    readonly recorded: boolean
    readonly results: number
    readonly lots: number
    readonly properties: readonly PropertyKey[]
    readonly first: LotOnDay | null
    readonly last: LotOnDay | null
  }
  readonly 'sampled-outside-production': {
    readonly lot: string
    readonly sample: string
    readonly sampled: { readonly from: string; readonly to: string }
    readonly produced: { readonly from: string; readonly to: string }
  }
  /** Of a source: `lots` of `of` with a mortar cast on another day than its control, the farthest apart first. */
  readonly 'mortars-cast-apart': {
    readonly source: string
    readonly lots: number
    readonly of: number
    readonly listed: readonly ({
      readonly lot: string
      readonly control: string
      readonly days: number
    } | null)[]
  }
  readonly 'tested-on-closed-day': {
    readonly source: string
    readonly laboratory: string
    readonly tests: number
    readonly listed: readonly (LotOnDay | null)[]
  }
  readonly 'equipment-unverified': {
    readonly source: string
    readonly laboratory: string
    readonly mark: string
    readonly kind: string
    /** null where only a last day is stated. */
    readonly writtenEvery: string | null
    /** Last day that the verification held for, where one is stated. */
    readonly due: string | null
    /** The last verification before the tests; null where none was. */
    readonly verified: string | null
    readonly tests: number
    readonly first: LotOnDay | null
    readonly last: LotOnDay | null
  }
}
