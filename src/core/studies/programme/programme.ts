/** What is to be cast and tested: the shape of a programme. */
import type { Age } from '../../measure/age.ts'

export interface PlannedAge {
  readonly age: Age
  /** Hours either way. */
  readonly withinHours: number
  /** Specimens of a mortar crushed, and specimens read. */
  readonly strength: number
  readonly resistivity: number
}

export interface PlannedCondition {
  readonly code: string
  /** Code of the cement; null where the study lists none. */
  readonly cement: string | null
  /** Share of the cementitious mass replaced, %; null where it is not stated, or is one of volume. */
  readonly replacementPercent: number | null
  /** Water to cementitious material by mass; at constant flow that of the control. */
  readonly waterRatio: number | null
  /** Water of the control batch where the condition fixes it, g. */
  readonly controlWaterG: number | null
  readonly flow: 'constant-w/cm' | 'constant-flow'
  /** One batch, g. */
  readonly cementitiousG: number | null
  readonly sandG: number | null
  readonly ages: readonly PlannedAge[]
}

/** Days of casting: from a first day on, or a day for each batch. */
export type CastingDays =
  | {
      readonly by: 'capacity'
      /** Days since 1970-01-01. */
      readonly first: number
      /** Days of the week, 0 for Monday. */
      readonly on: ReadonlySet<number>
      /** Days since 1970-01-01. */
      readonly except: ReadonlySet<number>
      /** Mortars a day in a laboratory, control batches counted; 2 or more. */
      readonly mortarsADay: number
    }
  /** Days since 1970-01-01, in order of the batches. */
  | { readonly by: 'batch'; readonly days: readonly number[] }

export interface Programme {
  /** Codes. */
  readonly materials: readonly string[]
  readonly conditions: readonly PlannedCondition[]
  /** Codes. */
  readonly laboratories: readonly string[]
  /** Of each material and condition in a laboratory. */
  readonly batches: number
  /** Codes of materials that are left out of conditions. */
  readonly leftOut: readonly {
    readonly materials: readonly string[]
    readonly conditions: readonly string[]
  }[]
  readonly control: 'shared' | 'each'
  readonly days: CastingDays
  /** Minute of the day at which water is added; null where it is not planned. */
  readonly castMinute: number | null
  /** Resistance is read on the specimens that are then crushed, or on others that are kept. */
  readonly resistivityOn: 'crushed' | 'kept'
  /** Specimens of a mortar beyond those tested. */
  readonly spare: number
  readonly inMouldHours: number
}

/**
 * Specimens cast of each mortar.
 * @param resistivityOn as of `Programme`
 * @param spare specimens beyond those tested
 * @returns whole number
 */
export function specimensPerMortar(
  ages: readonly PlannedAge[],
  resistivityOn: Programme['resistivityOn'],
  spare: number,
): number {
  const total = (counts: readonly number[]) => counts.reduce((sum, one) => sum + one, 0)
  if (resistivityOn === 'crushed')
    return spare + total(ages.map(({ strength, resistivity }) => Math.max(strength, resistivity)))
  return (
    spare +
    total(ages.map(({ strength }) => strength)) +
    Math.max(0, ...ages.map(({ resistivity }) => resistivity))
  )
}
