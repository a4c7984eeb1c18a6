/** What the checks report that ask whether the material is still the same. */

export interface IdentityParams {
  /** Shares of a blend, per cent by mass, with what they add up to. */
  readonly 'blend-total': {
    readonly lot: string
    readonly total: number
    readonly shares: readonly { readonly source: string; readonly percent: number }[]
  }
  /** An outage by its title and days. */
  readonly 'sampled-in-outage': {
    readonly lot: string
    /** What lies within it: all of the production, or all of a sample. */
    readonly what: 'produced' | 'sampled'
    readonly title: string
    readonly from: string
    readonly to: string
  }
  /** `lots` of `of` on the other side, `near` of `of` close to the limit between classes; the newest are listed. */
  readonly 'class-beside-calcium': {
    readonly source: string
    readonly class: string
    readonly lots: number
    readonly of: number
    readonly near: number
    readonly listed: readonly ({ readonly lot: string; readonly calcium: number } | null)[]
  }
  /** Slope and half its interval in percentage points per ten lots. */
  readonly 'feed-rising': {
    readonly source: string
    readonly of: 'feed-moisture' | 'residue-160um'
    readonly lots: number
    readonly slope: number
    readonly half: number
  }
}
