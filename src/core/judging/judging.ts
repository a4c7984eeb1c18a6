/** One lot under one set: what every part of the judging needs at hand. */
import type { Comparison, Criterion } from '../criteria/criterion.ts'
import type { ClassLimit } from '../criteria/limits-for-class.ts'
import type { NoClassReason } from '../criteria/reason.ts'
import type { Evidence } from '../evidence/evidence.ts'

/** The class judged by: the claimed one where the set has it, or the one that follows from the material. */
export type ClassJudgedBy =
  | { readonly lotClass: string }
  | { readonly lotClass: null; readonly noClass: NoClassReason }

export type Judging = ClassJudgedBy & {
  readonly criterion: Criterion
  readonly evidence: Evidence
}

/** One comparison for one lot, with the limits that hold for its class. */
export type ComparisonCase = Judging & {
  readonly clause: Comparison
  readonly limits: readonly ClassLimit[]
}
