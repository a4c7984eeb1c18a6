/** What a clause is judged on: results that count, or why there are none. */
import type { ClauseDuty } from './criterion.ts'
import type { Moment } from '../measure/moment.ts'
import type { Duty } from '../measure/duty.ts'
import type { ReasonOf } from '../result/reason.ts'
import type { Result } from '../result/result.ts'

export interface SelectionParams {
  /** A test is on record and its result is due. */
  readonly 'result-awaited': { readonly due: string }
  readonly 'result-overdue': { readonly since: string }
  /** The clause counts results by one method alone; null for a result without a method. */
  readonly 'other-methods': { readonly method: string; readonly used: readonly (string | null)[] }
  /** The clause counts samples of one duty; null where it names none, and all on record verify. */
  readonly 'other-duties': { readonly duty: ClauseDuty | null; readonly used: readonly Duty[] }
  /** The clause counts what is computed from readings alone, and nothing else is on record. */
  readonly 'no-readings': Readonly<Record<string, never>>
  readonly 'no-result': Readonly<Record<string, never>>
  /** Every result on record broke its method's conditions, for these reasons. */
  readonly 'test-not-valid': { readonly reasons: Result['reasons'] }
}
export type SelectionReason = ReasonOf<SelectionParams>

export type Selection =
  | {
      readonly found: 'results'
      readonly results: readonly Result[]
      /** Valid results on samples that the clause does not judge. */
      readonly passedOver: readonly Result[]
    }
  | {
      readonly found: 'none'
      readonly outcome: 'pending'
      readonly reason: SelectionReason
      readonly due: Moment
    }
  | {
      readonly found: 'none'
      readonly outcome: 'not-reported' | 'not-valid'
      readonly reason: SelectionReason
    }
