/** What is known of one lot on one date when it is judged. */
import type { MaterialKind } from './criterion.ts'
import type { PropertyKey } from './properties.ts'
import type { PlannedTest, PrecedingResult, Result, UnmadeResult } from './result.ts'
import type { Quantity } from './units.ts'

export interface Evidence {
  /** Class that the lot, else its source, claims. */
  readonly class: string | null
  readonly kind: MaterialKind
  /** Calendar date on which the lot is judged. */
  readonly asOf: string
  /** The producer's results known by then, valid or not. */
  readonly results: readonly Result[]
  /** Tests that were done by then and gave no value. */
  readonly unmade?: readonly UnmadeResult[]
  /** Tests recorded without a reading by then. */
  readonly planned: readonly PlannedTest[]
  /** The most recent `count` valid results before this lot, oldest first. */
  preceding(property: PropertyKey, condition: string | undefined, age: string | undefined, method: string | undefined, count: number): readonly PrecedingResult[]
  /** Values that the source declares, as quantities or as written. */
  readonly declared?: Readonly<Record<string, Quantity | string | undefined>>
  /** Ids of the optional clauses that the purchaser asks for. */
  readonly requested?: ReadonlySet<string>
  /** A reader's name of a condition; its id without it. */
  conditionTitle?(id: string): string
}
