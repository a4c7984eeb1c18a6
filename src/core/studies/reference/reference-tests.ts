/** The reference tests of a material, and what their readings give. */
import type { Age } from '../../measure/age.ts'
import type { Moment } from '../../measure/moment.ts'
import { type BoundWater, boundWater, type CrucibleMasses } from './bound-water.ts'
import {
  type CalciumHydroxideConsumed,
  calciumHydroxideConsumed,
  type ConsumptionTest,
} from './calcium-hydroxide-consumed.ts'
import {
  type CalciumHydroxideFixed,
  calciumHydroxideFixed,
  type FixationTest,
} from './calcium-hydroxide-fixed.ts'
import { type CumulativeHeat, cumulativeHeat, type HeatTest } from './cumulative-heat.ts'
import { type LimeStrength, limeStrength } from './lime-strength.ts'
import { type Pozzolanicity, pozzolanicity, type PozzolanicityTest } from './pozzolanicity.ts'
import { isReferenceFault, type ReferenceFault } from './reference-fault.ts'

/** Figures that materials can be put in order by, best known first. */
export const REFERENCE_MEASURES = [
  'heat',
  'calcium-hydroxide-consumed',
  'bound-water',
  'calcium-hydroxide-fixed',
  'lime-strength',
] as const
export type ReferenceMeasure = (typeof REFERENCE_MEASURES)[number]

/** Readings of one reference test of one material, in stored units. */
export type ReferenceReadings =
  | { readonly test: 'heat'; readonly readings: HeatTest }
  | { readonly test: 'calcium-hydroxide-consumed'; readonly readings: ConsumptionTest }
  | { readonly test: 'bound-water'; readonly readings: readonly CrucibleMasses[] }
  | { readonly test: 'calcium-hydroxide-fixed'; readonly readings: FixationTest }
  | {
      readonly test: 'lime-strength'
      readonly readings: { readonly loadsKN: readonly number[]; readonly areaMm2: number }
    }
  | { readonly test: 'pozzolanicity'; readonly readings: PozzolanicityTest }

/** With what is said of the test. */
export type ReferenceTest = ReferenceReadings & {
  readonly material: string
  /** As its laboratory names it; empty where it does not. */
  readonly method: string
  /** Of the paste at the reading; null where it is not stated. */
  readonly age: Age | null
  readonly tested: Moment | null
}

/** What a test's readings give; the figure of each, but for the point of the pozzolanicity test, is `value`. */
export type ReferenceFound =
  | { readonly test: 'heat'; readonly found: CumulativeHeat }
  | { readonly test: 'calcium-hydroxide-consumed'; readonly found: CalciumHydroxideConsumed }
  | { readonly test: 'bound-water'; readonly found: BoundWater }
  | { readonly test: 'calcium-hydroxide-fixed'; readonly found: CalciumHydroxideFixed }
  | { readonly test: 'lime-strength'; readonly found: LimeStrength }
  | { readonly test: 'pozzolanicity'; readonly found: Pozzolanicity }

/** What one test's readings give, or why they give nothing. */
export function referenceFound(of: ReferenceReadings): ReferenceFound | ReferenceFault {
  switch (of.test) {
    case 'heat':
      return sound(cumulativeHeat(of.readings), (found) => ({ test: of.test, found }))
    case 'calcium-hydroxide-consumed':
      return sound(calciumHydroxideConsumed(of.readings), (found) => ({ test: of.test, found }))
    case 'bound-water':
      return sound(boundWater(of.readings), (found) => ({ test: of.test, found }))
    case 'calcium-hydroxide-fixed':
      return sound(calciumHydroxideFixed(of.readings), (found) => ({ test: of.test, found }))
    case 'lime-strength':
      return { test: of.test, found: limeStrength(of.readings.loadsKN, of.readings.areaMm2) }
    case 'pozzolanicity':
      return { test: of.test, found: pozzolanicity(of.readings) }
  }
}

function sound<Found extends object>(
  found: Found | ReferenceFault,
  made: (found: Found) => ReferenceFound,
): ReferenceFound | ReferenceFault {
  return isReferenceFault(found) ? found : made(found)
}
