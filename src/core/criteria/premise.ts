/**
 * The answer to a demand that decides whether a clause applies, and the same demand as a reason states it.
 */
import type { PropertyKey } from '../measure/properties.ts'
import type { ReasonOf } from '../result/reason.ts'
import type { FactPremise, Premise } from './criterion.ts'
import { type StatedLimit, statedLimits } from './limits-for-class.ts'
import type { SelectionReason } from './selection.ts'

/** A premise with its limits as they stand for one class. */
export type StatedPremise =
  | FactPremise
  | { readonly property: PropertyKey; readonly age?: string; readonly limits: readonly StatedLimit[] }

export interface PremiseParams {
  readonly 'fact-not-stated': { readonly fact: string }
  /** The fact is stated, and is none of the words asked for. */
  readonly 'fact-otherwise': FactPremise
  readonly 'property-otherwise': {
    readonly property: PropertyKey
    readonly limits: readonly StatedLimit[]
  }
  readonly 'property-not-determined': {
    readonly property: PropertyKey
    readonly reason: SelectionReason
  }
  /** A censored result lies on both sides of the limits. */
  readonly 'property-on-both-sides': {
    readonly property: PropertyKey
    readonly limits: readonly StatedLimit[]
  }
  /** A censored result lies on both sides of a limit of the band. */
  readonly 'band-on-both-sides': Readonly<Record<string, never>>
}
export type PremiseReason = ReasonOf<PremiseParams>

/** Yes, no, or not to be decided from the lot's data. */
export type PremiseAnswer =
  | { readonly holds: 'yes' }
  | { readonly holds: 'no'; readonly because: PremiseReason }
  | { readonly holds: 'open'; readonly because: PremiseReason }

/**
 * Premises as a reason states them for a class.
 * @param lotClass "F" or "N/2"; null where no class is known
 */
export function premisesForClass(premises: readonly Premise[], lotClass: string | null): StatedPremise[] {
  return premises.map((premise) => {
    if ('fact' in premise) return { fact: premise.fact, is: premise.is }
    const { property, age, limits } = premise
    return {
      property,
      ...(age === undefined ? {} : { age: age.text }),
      limits: statedLimits(limits, lotClass),
    }
  })
}
