/** What the checks of completeness report of a source. */
import type { PropertyKey } from '../measure/properties.ts'

/** A lot beside a gap in the numbers. */
export interface NumberedLot {
  readonly lot: string
  readonly number: string
  /** Day of sampling. */
  readonly sampled: string
}

export interface CompletenessParams {
  /** Numbers that no lot bears, from the first to the last; null for a neighbour that is not to be named. */
  readonly 'number-gap': {
    readonly source: string
    readonly first: string
    readonly last: string
    readonly missing: number
    /** Numbers among them that are explained as not used. */
    readonly apart: number
    readonly before: NumberedLot | null
    readonly after: NumberedLot | null
  }
  /** Months without a report whose day has passed, as year and month. */
  readonly 'report-missing': {
    readonly source: string
    readonly first: string
    readonly last: string
    readonly months: number
    /** Day by which the first was due. */
    readonly due: string
  }
  readonly 'report-late': {
    readonly source: string
    readonly month: string
    readonly due: string
    readonly received: string
    readonly daysLate: number
  }
  /** A row of the sampling plan that lots fall short of: the farthest behind first. */
  readonly 'sampled-behind-plan': {
    readonly source: string
    readonly properties: readonly PropertyKey[]
    readonly writtenEvery: readonly string[]
    readonly looked: number
    readonly behind: number
    readonly lots: readonly (BehindPlan | null)[]
  }
  /** Months, or silos of a month, that do not balance; masses in tonnes, the newest months listed. */
  readonly 'balance-off': {
    readonly source: string
    readonly off: number
    readonly of: number
    /** Of all of them, produced and not accounted for. */
    readonly total: number
    /** Of what was produced, beyond which it is asked. */
    readonly percent: number
    readonly listed: readonly {
      readonly month: string
      readonly silo: string | null
      readonly difference: number
      readonly produced: number
    }[]
  }
  /** Months whose balance tells of other diversions than the ledger; masses in tonnes. */
  readonly 'diversion-apart': {
    readonly source: string
    readonly apart: number
    readonly of: number
    readonly listed: readonly {
      readonly month: string
      readonly silo: string | null
      readonly balance: number
      readonly ledger: number
    }[]
  }
  readonly 'shipped-above-certified': {
    readonly source: string
    readonly shippedT: number
    readonly certifiedT: number
  }
  readonly 'certificate-unshipped': {
    readonly lot: string
    readonly issued: string
    readonly days: number
  }
}

/** What each sample of a lot stands for. */
export interface BehindPlan {
  readonly lot: string
  readonly tonnes: number
  readonly days: number
  readonly samples: number
}
