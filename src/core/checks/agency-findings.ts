/** What the checks report that hold an agency's results against the producer's. */
import type { StatedLimit } from '../criteria/limits-for-class.ts'
import type { PropertyKey } from '../measure/properties.ts'

/** What was tested, by the ids of the records. */
interface OfTest {
  readonly property: PropertyKey
  readonly condition: string | null
  readonly age: string | null
}

/** Two results of one lot in `unit`, and the agency's sample. */
interface OfPair extends OfTest {
  readonly lot: string
  readonly laboratory: string
  readonly sample: string
  readonly producer: number
  readonly agency: number
  readonly unit: string
  readonly decimals: number
}

export interface AgencyFindingParams {
  /** The difference, agency less producer, and its limit in the unit of the property. */
  readonly 'split-beyond-limit': OfPair & {
    readonly difference: number
    readonly limit: number
    readonly source: string
  }
  /** One of the two meets the limits named, and the other would not. */
  readonly 'agency-other-side': OfPair & {
    readonly kind: 'split' | 'independent'
    readonly meets: 'producer' | 'agency'
    readonly limits: readonly { readonly clause: string; readonly limit: StatedLimit }[]
    /** The clause takes another result too, which the sample was not tested for. */
    readonly otherWay?: 'not-tested'
  }
  /** The mean difference of n splits, its 95 % interval, and the chance of one so far from zero. */
  readonly 'split-bias': OfTest & {
    readonly source: string
    readonly n: number
    readonly mean: number
    readonly low: number
    readonly high: number
    readonly p: number
    readonly unit: string
    readonly decimals: number
  }
  /** Two sets of results that differ at the level. */
  readonly 'independent-differs': OfTest & {
    readonly source: string
    readonly differ: 'scatter' | 'means' | 'both'
    readonly level: number
    readonly agency: number
    readonly agencyMean: number
    readonly producer: number
    readonly producerMean: number
    /** null where one side does not scatter at all. */
    readonly f: number | null
    readonly pOfF: number
    readonly difference: number
    readonly pOfT: number
    readonly unit: string
    readonly decimals: number
  }
  /** `agencyFailed` of the agency's results fail a limit that all of the producer's meet. */
  readonly 'producer-never-fails': OfTest & {
    readonly source: string
    readonly clause: string
    readonly limit: StatedLimit
    readonly agency: number
    readonly agencyFailed: number
    readonly producer: number
    readonly probability: number
  }
  /** A planned period that is over with fewer samples, or visits, on record than planned. */
  readonly 'verification-behind': {
    readonly source: string
    readonly kind: 'independent' | 'split' | 'assurance'
    readonly from: string
    readonly to: string
    readonly planned: number
    readonly taken: number
  }
  readonly 'no-independent-sample': { readonly source: string; readonly splits: number }
  /** Samples of the agency without a word on their custody, by their lots. */
  readonly 'custody-not-stated': {
    readonly source: string
    readonly without: number
    readonly samples: number
    readonly listed: readonly (string | null)[]
  }
}

/** Their codes: what they say is published only with the agency's results. */
export const AGENCY_CHECKS = [
  'split-beyond-limit',
  'agency-other-side',
  'split-bias',
  'independent-differs',
  'producer-never-fails',
  'verification-behind',
  'no-independent-sample',
  'custody-not-stated',
] as const satisfies readonly (keyof AgencyFindingParams)[]
