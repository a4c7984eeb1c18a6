/** One figure of a material in a reference test of reactivity, from its readings or as its laboratory reported it. */
import type { Quantity } from '../../core/measure/units.ts'
import type {
  ReferenceFound,
  ReferenceMeasure,
  ReferenceTest,
} from '../../core/studies/reference/reference-tests.ts'

export type ReferenceResult =
  | {
      readonly from: 'readings'
      readonly material: string
      readonly measure: ReferenceMeasure | 'pozzolanicity'
      readonly test: ReferenceTest
      readonly found: ReferenceFound
    }
  /** Not recomputed. */
  | {
      readonly from: 'reported'
      readonly material: string
      readonly measure: 'heat' | 'calcium-hydroxide-consumed'
      readonly stated: Quantity
    }

/** Figures of a measure that can be computed with, by material. */
export function referenceValues(
  results: readonly ReferenceResult[],
  measure: ReferenceMeasure,
): ReadonlyMap<string, number> {
  return new Map(
    results.flatMap((result): [string, number][] => {
      const value = result.measure === measure ? referenceValue(result) : null
      return value === null ? [] : [[result.material, value]]
    }),
  )
}

/** The figure that materials are put in order by; null for a point, and for a figure known only as a bound. */
export function referenceValue(result: ReferenceResult): number | null {
  if (result.from === 'reported') return result.stated.censored === undefined ? result.stated.value : null
  return result.found.test === 'pozzolanicity' ? null : result.found.found.value
}
