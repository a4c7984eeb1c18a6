/** Verdicts with the clauses that decided. Plain data: `src/words/` words them. */
import type { Moment } from '../measure/moment.ts'
import type { Age } from '../measure/age.ts'
import type { Duty, SampleKind } from '../measure/duty.ts'
import type { PropertyKey } from '../measure/properties.ts'
import type { Uncertainty } from '../result/uncertainty.ts'
import type { Clause } from './criterion.ts'
import type { StatedLimit } from './limits-for-class.ts'
import type { ClauseReasons, Release, VerdictReason } from './reason.ts'
import type { Outcome } from './outcome.ts'

export interface AppliedLimit extends StatedLimit {
  /** In `unit`; two for `between`, none for `report`. */
  readonly values: readonly number[]
  readonly unit: string
  readonly layer: string
}

/** How far a value stands from where its outcome changes, measured by its own standard uncertainty. */
export interface DoubtOfOutcome {
  /** To the nearest end of what is admitted: above zero inside, below zero beyond. */
  readonly margin: number
  /** That end: before rounding where the value is rounded first, 74.5 for "at least 75 %". */
  readonly end: number
  /** Rounding step that put the end half a step beyond the limit; zero where nothing is rounded. */
  readonly step: number
  /** Whether it is the lower or the upper end of what is admitted. */
  readonly side: 'low' | 'high'
  readonly u: number
  /** Of margin and `u`; a difference of per cents is in points. */
  readonly unit: string
  readonly decimals: number
  /** The uncertainty leaves no doubt worth a line on paper. */
  readonly clear: boolean
  /** Batches in all, each independent of the others, whose mean would decide; null where no number does. */
  readonly batches: number | null
}

export interface ClauseOutcome {
  readonly id: string
  readonly outcome: Outcome
  /** Whether this clause decided the verdict. */
  readonly decides: boolean
  readonly information: boolean
  readonly property?: PropertyKey
  readonly condition?: string
  readonly age?: Age
  readonly kind:
    | 'value'
    | 'deviation'
    | 'statistic'
    | 'bands'
    | 'group'
    | 'fact'
    | 'document'
    | 'class'
    | 'sampling'
  readonly combine?: 'any-of' | 'all-of'
  /** The value judged, unrounded: the result's, or its deviation; null where there is none. */
  readonly value: number | null
  /**
   * What that value may be where it is known only within bounds, in its unit; null where nothing bounds it on that
   * side.
   */
  readonly bounds?: { readonly low: number | null; readonly high: number | null }
  /** The value as compared, after the rounding that the decision rule asks for. */
  readonly compared: number | null
  readonly unit: string | null
  /** Decimals that the comparison was made at. */
  readonly decimals: number | null
  readonly limit: AppliedLimit | null
  /** Key of the result judged. */
  readonly result: string | null
  readonly reasons: ClauseReasons
  readonly due?: Moment
  /**
   * Reference of a deviation: the mean and the preceding results it rests on, the declared value or the control's.
   */
  readonly against?: {
    /** Absent of a mean or an estimate that is itself what is judged. */
    readonly from?: 'preceding' | 'declared' | 'control'
    readonly mean: number
    /** Where the mean is known only within bounds. */
    readonly bounds?: { readonly low: number | null; readonly high: number | null }
    readonly n: number
    /** Lots of the preceding results, oldest first, and their values in the stored unit. */
    readonly lots: readonly string[]
    readonly values: readonly number[]
  }
  /**
   * Standard uncertainty of the value between batches: a guarded or probability rule decides by it, otherwise
   * it is for information.
   */
  readonly uncertainty?: Uncertainty
  readonly doubt?: DoubtOfOutcome
  /** Title of the band or region that the value falls into. */
  readonly band?: string
  /** Class that the claimed one is accepted as. */
  readonly acceptedAs?: string
  /** A supplement made the demand easier: which one, and the clause as it stood before. */
  readonly relaxed?: { readonly by: string; readonly former: Clause }
  /** Samples that the clause does not judge and that would not meet its limit. */
  readonly others?: readonly OtherSample[]
  readonly clauses?: readonly ClauseOutcome[]
}

/** A result on a sample that is not judged. */
export interface OtherSample {
  /** Key of the result. */
  readonly result: string
  readonly sample: string
  readonly sampleKind: SampleKind
  readonly duty: Duty
  readonly value: number
  readonly unit: string
  readonly decimals: number
  readonly outcome: 'does-not-meet'
}

export interface Verdict {
  readonly criterion: string
  readonly edition: string
  readonly class: string | null
  /** Allowed class that the claimed one is accepted as. */
  readonly acceptedAs?: string
  readonly outcome: Outcome
  /** Ids of the clauses that decided, innermost comparisons included. */
  readonly decidedBy: readonly string[]
  /** How far the set is met, what decided, and what else is open. */
  readonly reasons: readonly VerdictReason[]
  readonly clauses: readonly ClauseOutcome[]
  /** The judgement rests on limits nobody has confirmed. */
  readonly trial: boolean
  /** Set when the set's release list is met while the verdict is still pending. */
  readonly release?: Release
}

/**
 * Outcomes in reading order, members after their group.
 * @param clauses as judged, or as worded
 */
export function everyClauseOutcome<C extends { readonly clauses?: readonly C[] }>(
  clauses: readonly C[],
): C[] {
  const every: C[] = []
  // Asked of every verdict many times: one list, filled, takes a tenth of what generators within one another do.
  const add = (members: readonly C[]) => {
    for (const clause of members) {
      every.push(clause)
      if (clause.clauses !== undefined) add(clause.clauses)
    }
  }
  add(clauses)
  return every
}
