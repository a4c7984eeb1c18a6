/** What an agency planned to verify in each period, and what of it is on record. */
import type { Moment } from '../measure/moment.ts'

export interface PlannedVerification {
  readonly kind: 'independent' | 'split' | 'assurance'
  readonly from: Moment
  readonly to: Moment
  readonly planned: number
  readonly sampler?: string
  readonly custody?: string
  readonly methods?: 'alike' | 'not-alike'
  readonly cement?: 'alike' | 'not-alike'
  readonly note?: string
  /** Level of F and t for independent samples. */
  readonly level?: AgencyLevel
  /** Assurance visits on record. */
  readonly visits?: readonly { readonly on: Moment; readonly note?: string }[]
}

/** As written in the plan. */
export type AgencyLevel = '1 %' | '5 %'

const LEVELS: Readonly<Record<AgencyLevel, number>> = { '1 %': 0.01, '5 %': 0.05 }

/**
 * The level that the newest plan of independent samples states.
 * @param plan in any order
 * @returns between 0 and 1; undefined where none states one
 */
export function levelOf(plan: readonly PlannedVerification[]): number | undefined {
  const stated = plan
    .toSorted((a, b) => a.from.day - b.from.day)
    .findLast(({ kind, level }) => kind === 'independent' && level !== undefined)
  return stated?.level && LEVELS[stated.level]
}

/** A sample of the agency with its results on record. */
export interface TakenSample {
  readonly kind: 'split' | 'independent'
  readonly lot: string
  /** When the sample was taken, else the lot's own sampling. */
  readonly taken: Moment
  readonly sampler?: string | undefined
  readonly custody?: string | undefined
}

export interface VerificationStatus extends PlannedVerification {
  /** Samples of the kind taken in the period, or visits made; null for assurance of which no visit is on record. */
  readonly taken: number | null
  /** Of those, how many name who took them, and how custody was kept. */
  readonly withSampler: number
  readonly withCustody: number
  /** Planned and not on record; null where what was done is not recorded. */
  readonly missing: number | null
  /** Whether the period is over. */
  readonly over: boolean
}

/**
 * Status of each planned period.
 * @param plan as the source's record states it
 * @param samples known by the date
 * @param asOf calendar date
 * @returns in the order of the plan
 */
export function verificationStatus(
  plan: readonly PlannedVerification[],
  samples: readonly TakenSample[],
  asOf: Moment,
): VerificationStatus[] {
  return plan.map((period) => {
    const own = samples.filter(
      ({ kind, taken }) => kind === period.kind && period.from.day <= taken.day && taken.day <= period.to.day,
    )
    const taken = period.kind === 'assurance' ? (period.visits?.length ?? null) : own.length
    return {
      ...period,
      taken,
      withSampler: own.filter(({ sampler }) => sampler !== undefined).length,
      withCustody: own.filter(({ custody }) => custody !== undefined).length,
      missing: taken === null ? null : Math.max(0, period.planned - taken),
      over: period.to.day < asOf.day,
    }
  })
}
