/**
 * What a computed or reported result is: the value, where it comes from, whether it counts, and its working.
 */
import type { Duty, SampleKind } from '../measure/duty.ts'
import type { Moment } from '../measure/moment.ts'
import type { Age } from '../measure/age.ts'
import type { PropertyKey } from '../measure/properties.ts'
import type { Interval } from '../statistics/ratio-interval.ts'
import type { Bounds } from './bounds.ts'
import type { ResultReason } from './reason.ts'
import type { WorkingStep } from './working.ts'

export interface Result {
  /**
   * property, condition, age, method, laboratory, sample joined by "|"; empty parts stay empty. Unique in a
   * lot and role but for retests.
   */
  readonly key: string
  readonly property: PropertyKey
  readonly condition?: string
  /** Nominal age as in the condition. */
  readonly age?: Age
  readonly method?: string
  readonly basis?: string
  readonly laboratory: string
  readonly sample: string
  readonly sampleKind: SampleKind
  /** What the sample serves, where the record states it; `dutyOf` knows what is usual. */
  readonly duty?: Duty
  readonly role: 'producer' | 'verification' | 'control'
  /** In the stored unit of the property; the limit of determination where `censored`. */
  readonly value: number
  readonly unit: string
  /**
   * Decimals to print the value with, in the stored unit: as written for reported values, the property's for
   * computed ones.
   */
  readonly decimals: number
  /** The text of the record, for a reported value. */
  readonly written?: string
  readonly censored?: 'below'
  /** What the value may be, where it is known only within bounds; `value` then comes from the written figures. */
  readonly bounds?: Bounds
  /** Of an index, from the scatter of this batch's specimens alone; no rule decides by it. */
  readonly interval?: Interval
  /** Specimens or determinations behind the value. */
  readonly n: number
  /** Last reading the value rests on, date or date and time as in the record. */
  readonly tested: Moment
  /** Since when it has been known, where that is later than `tested`. */
  readonly known?: Moment
  /** Moment at which the mortar was cast, for a result of a mortar: from then on the test is under way. */
  readonly begun?: Moment
  readonly control?: string
  /** Value of the same property of the control, in the same unit. */
  readonly controlValue?: number
  /** Where the control's value is known only within bounds. */
  readonly controlBounds?: Bounds
  /** The laboratory reported a mean without its specimens. */
  readonly summaryOnly?: true
  /** The laboratory reported the figure itself, without the readings of its mortar: it is not recomputed. */
  readonly finished?: true
  /** Standard uncertainty that the laboratory states with a finished figure, in the unit of a difference. */
  readonly statedU?: number
  readonly valid: boolean
  /** Why it is not valid, or what was noted about it. */
  readonly reasons: readonly ResultReason[]
  /** Made on demand: thousands of lots are judged without anybody reading their workings. */
  readonly working: () => readonly WorkingStep[]
}

/** Since when a result has been known. */
export function knownSince({ tested, known }: Pick<Result, 'tested' | 'known'>): Moment {
  return known ?? tested
}

/** A test that was done and gives no value: it is not valid, for these reasons, rather than not reported. */
export interface UnmadeResult {
  readonly property: PropertyKey
  readonly condition: string
  readonly age: Age
  readonly laboratory: string
  readonly sample: string
  readonly sampleKind: SampleKind
  readonly duty?: Duty
  readonly tested: Moment
  /** Moment at which the mortar was cast. */
  readonly begun: Moment
  readonly reasons: readonly ResultReason[]
}

/** Whether a test gave a value. */
export function isMade(outcome: Result | UnmadeResult): outcome is Result {
  return 'value' in outcome
}

/** A test that is listed in the record, cast or not, and has no reading by the as-of date. */
export interface PlannedTest {
  readonly property: PropertyKey
  readonly condition: string
  readonly age: Age
  /**
   * Whose reading is missing: the lot's own, that of its control, or both. Of an index without a control on record it is
   * the result, which readings or a finished figure may give.
   */
  readonly unread: 'lot' | 'control' | 'both' | 'result'
  readonly laboratory: string
  readonly sample: string
  readonly sampleKind: SampleKind
  readonly duty?: Duty
  /** Moment at which the mortar was cast. */
  readonly begun: Moment
  /** Date on which the age is reached. */
  readonly due: Moment
  /** Set from the day after that of due + tolerance + grace on: that day, the first on which it is late. */
  readonly overdueSince?: Moment
}

/** Two results that differ by the scatter of testing alone. */
export interface Duplicates {
  /** The value of the first, in the stored unit. */
  readonly first: number
  /** Of the second from it, without a sign. */
  readonly difference: number
}

/** One earlier result of the same source, class, property, condition, age and method. */
export interface PrecedingResult {
  readonly lot: string
  readonly sampled: Moment
  readonly value: number
  /** Where the value is known only within bounds. */
  readonly bounds?: Bounds
  /** Of the lot's first two results of that key by one laboratory on one sample, where it has such duplicates. */
  readonly duplicates?: Duplicates
}
