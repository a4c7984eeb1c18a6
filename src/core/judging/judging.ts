/** One lot under one set: what every part of the judging needs at hand. */
import type { Criterion } from '../criteria/criterion.ts'
import type { Evidence } from '../evidence/evidence.ts'

export interface Judging {
  readonly criterion: Criterion
  readonly evidence: Evidence
  /**
   * Class judged by: the claimed one where the set has it, or the one that follows from the material; null
   * where neither is known.
   */
  readonly lotClass: string | null
  /** Why no class is known. */
  readonly noClass?: string
}
