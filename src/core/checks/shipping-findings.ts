/** What the checks report that hold the days of shipping against other days. */
import type { PropertyKey } from '../measure/properties.ts'

/** Shipments of one kind, in order of date. */
export interface ShippedThen {
  readonly count: number
  readonly tonnes: number
  readonly first: { readonly bill: string; readonly date: string }
  readonly last: { readonly bill: string; readonly date: string }
}

interface OfLot {
  readonly lot: string
  readonly shipped: ShippedThen
}

/** The governing verdict that a lot does not meet. */
interface Failed {
  readonly lot: string
  /** What left of it alone; null for nothing. */
  readonly shipped: ShippedThen | null
  /** What may have drawn from it or from another lot; null for nothing. */
  readonly shared: ShippedThen | null
  readonly criterion: string
  readonly clauses: readonly string[]
  /** Day since which the verdict has been known. */
  readonly known: string
  /** Those clauses with the day since which each has been known; null where the day of its last result is not it. */
  readonly failing: readonly { readonly clause: string; readonly known: string | null }[]
}

export interface ShippingParams {
  /** `issued` is the day of the first certificate; null without any. */
  readonly 'shipped-without-certificate': OfLot & { readonly issued: string | null }
  /** `known` is the day on which the first result of the lot was known; null where none is. */
  readonly 'shipped-before-results': OfLot & { readonly known: string | null }
  /** Of a source: what left while results of the governing set were awaited. */
  readonly 'shipped-before-completion': {
    readonly source: string
    readonly count: number
    readonly of: number
    readonly tonnes: number
    readonly lots: number
  }
  /** What left after the early result was known, with `value` in `unit`, and before one at a later age was. */
  readonly 'shipped-on-missed-age': OfLot & {
    readonly known: string
    readonly property: PropertyKey
    readonly condition: string | null
    readonly age: string | null
    readonly value: number
    readonly decimals: number
    readonly unit: string
  }
  readonly 'failed-after-shipping': Failed
  readonly 'shipped-after-failure': Failed
  readonly 'shipped-after-withdrawal': OfLot & { readonly withdrawn: string }
  /** `issued` is the day of the certificate that was in force at the last of them. */
  readonly 'shipped-on-old-certificate': OfLot & { readonly issued: string; readonly days: number }
  /** Of a source: `since` is the day of the agency's action that ended the listing; null where none was before. */
  readonly 'shipped-while-unlisted': {
    readonly source: string
    readonly shipped: ShippedThen
    readonly by: string | null
    readonly state: 'never' | 'suspended' | 'removed' | 'ended' | 'not-approved'
    readonly since: string | null
  }
}
