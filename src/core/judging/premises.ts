/**
 * Whether a demand on another property, or a stated fact, holds for a lot: yes, no, or not to be decided from
 * its data.
 */
import { type Answer, compareWithLimit } from './compare-with-limit.ts'
import type { FactPremise, Limit, Premise, PropertyPremise } from '../criteria/criterion.ts'
import type { Evidence } from '../evidence/evidence.ts'
import { limitsForClass, listWords, quantitiesFor } from '../../words/limit-words.ts'
import { propertyWords, selectResults } from './select-result.ts'

export type Holds =
  | { readonly holds: 'yes' }
  | { readonly holds: 'no'; readonly because: string }
  | { readonly holds: 'open'; readonly because: string }

/** All premises together: one that fails decides, then one that is open. */
export function allHold(premises: readonly Premise[], evidence: Evidence, lotClass: string | null): Holds {
  const answers = premises.map((premise) =>
    'fact' in premise ? factHolds(premise, evidence) : propertyHolds(premise, evidence, lotClass),
  )
  return (
    answers.find((answer) => answer.holds === 'no') ??
    answers.find((answer) => answer.holds === 'open') ?? { holds: 'yes' }
  )
}

/**
 * "free calcium oxide is above 1.5 % and “seawater contact” is yes", for sentences.
 * @param limitsWords words of a premise's limits: for one class, or for all of them
 */
export function premisesWords(
  premises: readonly Premise[],
  limitsWords: (limits: readonly Limit[]) => string,
): string {
  return listWords(
    premises.map((premise) => {
      if ('fact' in premise) return `${factWords(premise.fact)} is ${listWords(premise.is, 'or')}`
      return `${propertyWords(premise)}${premise.age === undefined ? '' : ` at ${premise.age}`} is ${limitsWords(premise.limits)}`
    }),
    'and',
  )
}

/** A fact's key as words. */
export function factWords(fact: string): string {
  return `“${fact.replaceAll('-', ' ')}”`
}

function factHolds({ fact, is }: FactPremise, { facts }: Evidence): Holds {
  const stated = facts !== undefined && Object.hasOwn(facts, fact) ? facts[fact] : undefined
  if (stated === undefined) return { holds: 'open', because: `${factWords(fact)} is not stated` }
  return is.includes(stated)
    ? { holds: 'yes' }
    : { holds: 'no', because: `${factWords(fact)} is ${listWords(is, 'or')}` }
}

function propertyHolds(premise: PropertyPremise, evidence: Evidence, lotClass: string | null): Holds {
  const selection = selectResults(premise, evidence)
  const named = propertyWords(premise)
  if (selection.found === 'none')
    return { holds: 'open', because: `${named}, which cannot be decided: ${selection.reason}` }
  const answers = selection.results.map((result) => answersOf(premise.limits, result, lotClass))
  // With several results the premise holds as soon as one of them says so: the stricter reading of a clause
  // that depends on it.
  if (answers.some((answer) => answer.every((single) => single === 'met'))) return { holds: 'yes' }
  if (answers.every((answer) => answer.includes('not-met')))
    return { holds: 'no', because: `${named} is ${limitsForClass(premise.limits, lotClass)}` }
  return {
    holds: 'open',
    because: `${named}, which cannot be decided: a censored result lies on both sides of ${limitsForClass(premise.limits, lotClass)}`,
  }
}

/** Answers of one value to every limit that speaks of the class. */
export function answersOf(
  limits: readonly Limit[],
  result: { readonly value: number; readonly censored?: 'below' },
  lotClass: string | null,
): Answer[] {
  return limits.flatMap((limit): Answer[] => {
    const quantities = quantitiesFor(limit, lotClass)
    if (limit.operator === 'report') return []
    return quantities === undefined
      ? ['not-met']
      : [compareWithLimit(result, limit.operator, quantities).answer]
  })
}
