/**
 * Outcomes and verdicts: closed sets, with the clauses that decided. Plain data: a verdict is stored in
 * issued documents as it is.
 */
import type { Uncertainty } from '../result/uncertainty.ts'
import type { Operator } from './criterion.ts'
import type { PropertyKey } from '../measure/properties.ts'

export const OUTCOMES = [
  'meets',
  'meets-by-approval',
  'does-not-meet',
  'inconclusive',
  'pending',
  'not-reported',
  'insufficient-history',
  'not-valid',
  'not-applicable',
  'not-invoked',
  'reported',
] as const
export type Outcome = (typeof OUTCOMES)[number]

export interface AppliedLimit {
  readonly operator: Operator
  /** In `unit`; two for `between`, none for `report`. */
  readonly values: readonly number[]
  readonly unit: string
  /** The limit's own digits, for print ("70.0 %"), one for each value. */
  readonly written: readonly string[]
  readonly layer: string
}

export interface ClauseOutcome {
  readonly id: string
  /** Heading for a reader: the clause's own title or the property's, with condition and age. */
  readonly title: string
  readonly outcome: Outcome
  /** Whether this clause decided the verdict. */
  readonly decides: boolean
  readonly information: boolean
  readonly property?: PropertyKey
  readonly condition?: string
  readonly age?: string
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
  /** The value as compared, after the rounding that the decision rule asks for. */
  readonly compared: number | null
  readonly unit: string | null
  /** Decimals that the comparison was made at. */
  readonly decimals: number | null
  readonly limit: AppliedLimit | null
  /** Key of the result judged. */
  readonly result: string | null
  /** One sentence without a full stop. */
  readonly reason: string
  readonly due?: string
  /** Reference of a deviation: the mean and the preceding results it rests on, or the declared value. */
  readonly against?: { readonly mean: number; readonly n: number; readonly lots: readonly string[] }
  /**
   * Standard uncertainty of the value between batches: a guarded or probability rule decides by it, otherwise
   * it is for information.
   */
  readonly uncertainty?: Uncertainty
  /** How far the value stands from the limit, measured by that uncertainty; one line without a full stop. */
  readonly doubt?: string
  /** Title of the band or region that the value falls into. */
  readonly band?: string
  /** Class that the claimed one is accepted as. */
  readonly acceptedAs?: string
  /** A supplement made the demand easier: which one, and what stood before. */
  readonly relaxed?: { readonly by: string; readonly was: string }
  readonly clauses?: readonly ClauseOutcome[]
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
  /** Sentences: what decided, and what is met so far. */
  readonly reasons: readonly string[]
  readonly clauses: readonly ClauseOutcome[]
  /** The judgement rests on limits nobody has confirmed. */
  readonly trial: boolean
  /**
   * Set when the set's release list is met while the verdict is still pending: what the release is
   * conditional on.
   */
  readonly release?: string
}
