/** What is known of one lot on one date when it is judged. */
import type { Duty } from '../measure/duty.ts'
import type { Moment } from '../measure/moment.ts'
import type { Age } from '../measure/age.ts'
import type { MaterialKind } from '../measure/material-kind.ts'
import type { Uncertainty } from '../result/uncertainty.ts'
import type { Coverage } from '../history/coverage.ts'
import type { SampleOfDuty } from '../history/sample-of-duty.ts'
import type { PropertyKey } from '../measure/properties.ts'
import type { PlannedTest, PrecedingResult, Result, UnmadeResult } from '../result/result.ts'
import type { Quantity } from '../measure/units.ts'

/** A document of the lot or its source. */
export interface KnownDocument {
  readonly kind: string
  readonly title: string
  readonly from?: Moment
  readonly to?: Moment
}

/**
 * An approval of the source; one that names set and clause lets a result over the plain limit, on the
 * evidence named.
 */
export interface KnownApproval {
  readonly from: Moment
  readonly to?: Moment
  readonly by: string
  readonly scope: string
  readonly set?: string
  readonly clause?: string
  readonly evidence?: string
}

/** Something that happened at the source. */
export interface KnownEvent {
  readonly date: Moment
  readonly kind: string
  readonly title: string
}

export interface Evidence {
  /** Class that the lot, else its source, claims. */
  readonly class: string | null
  /** Classes claimed under a set of its own class names, by set. */
  readonly classUnder?: Readonly<Record<string, string>>
  readonly kind: MaterialKind
  /** Calendar date on which the lot is judged. */
  readonly asOf: Moment
  /** The producer's results known by then, valid or not. */
  readonly results: readonly Result[]
  /** Tests that were done by then and gave no value. */
  readonly unmade?: readonly UnmadeResult[]
  /** Tests recorded without a reading by then. */
  readonly planned: readonly PlannedTest[]
  /**
   * The most recent `count` valid results before this lot, oldest first; before a sample of it where one is named,
   * on samples of its duty.
   */
  preceding(
    property: PropertyKey,
    condition: string | undefined,
    age: Age | undefined,
    method: string | undefined,
    count: number,
    before?: SampleOfDuty,
  ): readonly PrecedingResult[]
  /** Valid results before this lot, sampled within so many days of it, oldest first. */
  period?(
    property: PropertyKey,
    condition: string | undefined,
    age: Age | undefined,
    method: string | undefined,
    days: number,
    before?: SampleOfDuty,
  ): readonly PrecedingResult[]
  /** Sampling since the test before; `sample` and `duty` count tests on such samples alone. */
  coverage?(property: PropertyKey, sample: 'grab' | 'composite' | undefined, duty?: Duty): Coverage
  /** Days from the source's first lot to this one. */
  readonly recordDays?: number
  /** Values that the source declares, as quantities or as written. */
  readonly declared?: Readonly<Record<string, Quantity | string | undefined>>
  /** Facts stated of the lot, else of its source. */
  readonly facts?: Readonly<Record<string, string | undefined>>
  readonly documents?: readonly KnownDocument[]
  readonly approvals?: readonly KnownApproval[]
  /** What happened at the source by the date, in order of date. */
  readonly events?: readonly KnownEvent[]
  /** Ids of the optional clauses that the purchaser asks for, by set. */
  readonly requested?: Readonly<Record<string, readonly string[]>>
  /** Undefined where the laboratory states none. */
  uncertaintyOf?(result: Result): Uncertainty | undefined
}
