/** What the checks of a lot by itself, and beside all others, report. */
import type { StatedLimit } from '../criteria/limits-for-class.ts'
import type { Outcome } from '../criteria/outcome.ts'
import type { VerdictStanding } from '../criteria/verdict-standing.ts'
import type { SampleKind } from '../measure/duty.ts'
import type { PropertyKey } from '../measure/properties.ts'
import type { Bounds } from '../result/bounds.ts'
import type { PlannedTest } from '../result/result.ts'

/** A place in a record where an issued document and today's record differ; values as texts. */
export interface RecordChange {
  /** Keys from the record down to the value. */
  readonly path: readonly string[]
  /** Null where there is nothing. */
  readonly issued: string | null
  readonly today: string | null
  /** What stands there is not published: that it differs is all that may be said. */
  readonly withheld?: true
}

/** A verdict, or a clause of it, with another outcome than in an issued document. */
export interface OutcomeChange {
  readonly criterion: string
  /** Absent where the verdict itself differs. */
  readonly clause?: string
  readonly issued: Outcome
  /** Null where the lot is not judged under the set today, or the set has no such clause. */
  readonly today: Outcome | null
  /** What must be said beside either outcome; absent of a verdict whose clauses are not known. */
  readonly issuedStanding?: VerdictStanding
  readonly todayStanding?: VerdictStanding
}

/** The revision of a lot that a finding speaks of. */
interface OfRevision {
  readonly lot: string
  readonly revision: number
}

/** One entry for each check, with what its sentence and its evidence need. */
export interface LotFindingParams {
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
      /** Another set of the list that this one takes the clause and its limit from: they are one clause. */
      readonly from?: string
    }[]
  }
  /** A result outside what is plausible of its property. */
  readonly 'result-implausible': OfTest & Outside & { readonly value: number; readonly decimals: number }
  /** An index far above what any material gives, whose inverse is a common one. */
  readonly 'test-and-control-swapped': OfTest & {
    readonly control: string
    readonly value: number
    /** Control over test, in per cent. */
    readonly inverse: number
    readonly decimals: number
    /** From here on the question is asked. */
    readonly above: number
  }
  /** Oxides and loss on ignition of one analysis that do not add up to about the whole. */
  readonly 'oxide-total': OfAnalysis &
    Outside & {
      readonly total: number
      readonly members: readonly {
        readonly property: PropertyKey
        readonly value: number
        readonly decimals: number
      }[]
    }
  /** A part that is larger than its whole: available alkalis above the total. */
  readonly 'alkalis-above-total': OfAnalysis & { readonly available: number; readonly total: number }
  /** A loss on ignition below zero, or, of the material as received, below the moisture of the same analysis. */
  readonly 'loss-too-small': OfAnalysis & {
    readonly value: number
    readonly decimals: number
    /** Null where the loss is below zero and no moisture is compared. */
    readonly moisture: { readonly value: number; readonly decimals: number } | null
  }
  /** A result many times larger or smaller than those before it. */
  readonly 'far-from-history': OfTest & {
    readonly value: number
    readonly decimals: number
    readonly unit: string
    readonly median: number
    readonly n: number
  }
  /** Mass of one bill, in tonnes; `written` as in the record. */
  readonly 'shipment-mass': Outside & {
    readonly lot: string
    readonly bill: string
    readonly written: string
  }
  readonly 'shipped-above-quantity': {
    readonly lot: string
    readonly shippedTonnes: number
    readonly quantityTonnes: number
  }
  /** The other entries that bear the bill's number: their lots, null for one that is not to be named. */
  readonly 'bill-twice': {
    readonly lot: string
    readonly bill: string
    readonly others: readonly (string | null)[]
  }
  /** So many values that stand alike in other lots: their ids, null for one that is not to be named. */
  readonly 'readings-alike': {
    readonly lot: string
    readonly of: 'oxides' | 'analysis' | 'mortar'
    readonly sample: string
    readonly laboratory: string
    readonly values: number
    readonly others: readonly (string | null)[]
  }
  /** All specimens of one batch and age, with the one reading that they have. */
  readonly 'specimens-equal': OfSpecimens & { readonly written: string }
  /** Readings of a test mortar that are those of its control. */
  readonly 'readings-of-control': OfSpecimens & { readonly control: string }
  readonly 'number-off-pattern': { readonly lot: string; readonly number: string; readonly pattern: string }
  /** Quantity of a lot, in tonnes; `written` as in the record. */
  readonly 'lot-quantity': Outside & { readonly lot: string; readonly written: string }
  /** Mixing water of a test mortar in per cent of its control's. */
  readonly 'water-out-of-proportion': Outside & {
    readonly lot: string
    readonly condition: string
    readonly control: string
    readonly sample: string
    readonly percent: number
    readonly writtenTest: string
    readonly writtenControl: string
  }
  /** A finished figure beside what the readings of the same test give; values in `unit`. */
  readonly 'finished-beside-readings': OfTest & {
    readonly finished: number
    /** Null where the readings give no valid value. */
    readonly recomputed: number | null
    /** Where that value is known only within bounds. */
    readonly bounds?: Bounds
    readonly unit: string
    readonly finishedDecimals: number
    readonly decimals: number
  }
}

/** What is plausible, in `unit`: an own choice of each check. */
interface Outside {
  readonly low: number
  readonly high: number
  readonly unit: string
}

interface OfAnalysis {
  readonly lot: string
  readonly laboratory: string
  readonly sample: string
}

/** Specimens of one mortar read at one age, by the ids of the records. */
interface OfSpecimens {
  readonly lot: string
  readonly of: 'strength' | 'resistivity'
  readonly condition: string
  readonly age: string
  readonly laboratory: string
  readonly sample: string
  readonly specimens: number
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
