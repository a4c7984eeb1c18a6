/**
 * What an audit check reports: a question with its evidence, never an accusation, never a change of the exit
 * status.
 */
import type { StatedLimit } from '../criteria/limits-for-class.ts'
import type { Outcome } from '../criteria/outcome.ts'
import type { SampleKind } from '../measure/duty.ts'
import type { PropertyKey } from '../measure/properties.ts'
import type { ReasonOf } from '../result/reason.ts'
import type { PlannedTest } from '../result/result.ts'

/** A place in a record where an issued document and today's record differ; values as texts. */
export interface RecordChange {
  /** Keys from the record down to the value. */
  readonly path: readonly string[]
  /** Null where there is nothing. */
  readonly issued: string | null
  readonly today: string | null
}

/** A verdict, or a clause of it, with another outcome than in an issued document. */
export interface OutcomeChange {
  readonly criterion: string
  /** Absent where the verdict itself differs. */
  readonly clause?: string
  readonly issued: Outcome
  /** Null where the lot is not judged under the set today, or the set has no such clause. */
  readonly today: Outcome | null
}

/** The revision of a lot that a finding speaks of. */
interface OfRevision {
  readonly lot: string
  readonly revision: number
}

/** One entry for each check, with what its sentence and its evidence need. */
export interface FindingParams {
  /** `places` counts all differences, of which `changes` holds the first. */
  readonly 'changed-after-issue': OfRevision & {
    readonly places: number
    readonly changes: readonly RecordChange[]
  }
  readonly 'would-now-be-judged-otherwise': OfRevision & { readonly changes: readonly OutcomeChange[] }
  /** `since` is the first day after tolerance and grace had run out. */
  readonly 'result-overdue': {
    readonly lot: string
    readonly property: PropertyKey
    /** Id of the condition. */
    readonly condition: string
    readonly age: string
    readonly unread: PlannedTest['unread']
    readonly due: string
    readonly since: string
  }
  /** A sample that no clause judges, beside the limits that it would not meet. */
  readonly 'other-sample-fails': {
    readonly lot: string
    readonly property: PropertyKey
    readonly sample: string
    readonly sampleKind: SampleKind
    readonly value: number
    readonly unit: string
    readonly decimals: number
    /** Clauses by set, each with its limit as it holds for the lot. */
    readonly clauses: readonly {
      readonly criterion: string
      readonly clause: string
      readonly limit: StatedLimit
    }[]
  }
  /** A finished figure beside what the readings of the same test give; values in `unit`. */
  readonly 'finished-beside-readings': OfTest & {
    readonly finished: number
    /** Null where the readings give no valid value. */
    readonly recomputed: number | null
    readonly unit: string
    readonly finishedDecimals: number
    readonly decimals: number
  }
}

/** The test that a result comes from, by the ids of the records. */
interface OfTest {
  readonly lot: string
  readonly property: PropertyKey
  readonly condition: string | null
  readonly age: string | null
  readonly laboratory: string
  readonly sample: string
}

/** The check that reports, as the code, and what it found. */
export type FindingReason = ReasonOf<FindingParams>

export interface Finding {
  /** Permanent within its lot or source: check and what it is about. */
  readonly id: string
  readonly severity: 'blocks' | 'warning' | 'information'
  /** Lot, source, result or clause that it is about. */
  readonly about: string
  readonly reason: FindingReason
}
