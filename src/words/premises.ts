/** Demands on another property and stated facts in words, and why one of them does not hold or is open. */
import type { Age } from '../core/measure/age.ts'
import type { FactPremise } from '../core/criteria/criterion.ts'
import type { PremiseParams, PremiseReason, StatedPremise } from '../core/criteria/premise.ts'
import type { PropertyKey } from '../core/measure/properties.ts'
import { limitsWords } from './limits.ts'
import { listWords } from './sentences.ts'
import { propertyWords } from './property-names.ts'
import { type WordsOf, wordsOf } from './reason-words.ts'
import { selectionWords } from './selection-reasons.ts'
import type { UnitSystem } from './unit-systems.ts'

interface PropertyDemand<Limits> {
  readonly property: PropertyKey
  /** Of a premise, or its text in a reason. */
  readonly age?: Age | string
  readonly limits: Limits
}

/**
 * "free calcium oxide is above 1.5 % and “seawater contact” is yes", for sentences.
 * @param wordsOfLimits words of a premise's limits: for one class, or for all of them
 */
export function premisesWords<Limits>(
  premises: readonly (FactPremise | PropertyDemand<Limits>)[],
  wordsOfLimits: (limits: Limits) => string,
): string {
  return listWords(
    premises.map((premise) => {
      if ('fact' in premise) return factIs(premise)
      return `${propertyWords(premise)}${premise.age === undefined ? '' : ` at ${premise.age}`} is ${wordsOfLimits(premise.limits)}`
    }),
    'and',
  )
}

export function statedPremisesWords(premises: readonly StatedPremise[]): string {
  return premisesWords(premises, limitsWords)
}

/** A fact's key as words. */
export function factWords(fact: string): string {
  return `“${fact.replaceAll('-', ' ')}”`
}

function factIs({ fact, is }: FactPremise): string {
  return `${factWords(fact)} is ${listWords(is, 'or')}`
}

const UNDECIDED = 'which cannot be decided'

const REASONS: WordsOf<PremiseParams, [units: UnitSystem]> = {
  'fact-not-stated': ({ fact }) => `${factWords(fact)}, which is not stated`,
  'fact-otherwise': factIs,
  'property-otherwise': ({ property, limits }) => `${propertyWords({ property })} is ${limitsWords(limits)}`,
  'property-not-determined': ({ property, reason }, units) =>
    `${propertyWords({ property })}, ${UNDECIDED}: ${selectionWords(reason, units)}`,
  'property-on-both-sides': ({ property, limits }) =>
    `${propertyWords({ property })}, ${UNDECIDED}: the result is reported as a bound, which leaves open whether it is ${limitsWords(limits)}`,
  'band-on-both-sides': () =>
    'a result reported as a bound, which leaves open on which side of the band’s limit it lies',
}

/** What follows "applies only where", "applies by" and their like. */
export function premiseReasonWords(reason: PremiseReason, units: UnitSystem): string {
  return wordsOf(REASONS, reason, units)
}
