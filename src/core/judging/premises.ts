/**
 * Whether a demand on another property, or a stated fact, holds for a lot: yes, no, or not to be decided from
 * its data.
 */
import type { FactPremise, Limit, Premise, PropertyPremise } from '../criteria/criterion.ts'
import { quantitiesFor, statedLimits } from '../criteria/limits-for-class.ts'
import type { PremiseAnswer } from '../criteria/premise.ts'
import type { Evidence } from '../evidence/evidence.ts'
import { type Answer, compareWithLimit, type JudgedValue } from './compare-with-limit.ts'
import { selectResults } from './select-result.ts'

/**
 * All premises of a demand together: one that fails decides, then one that is open.
 * @param lotClass class for limits that depend on it; null where no class is known
 * @returns yes where there are no premises
 * Note: of several results one that meets a premise is enough, the stricter reading of a demand that depends on
 * it; one that is missing leaves it open.
 */
export function allHold(
  premises: readonly Premise[],
  evidence: Evidence,
  lotClass: string | null,
): PremiseAnswer {
  return together(premises, evidence, (premise) =>
    propertyUnmet(premise, evidence, { lotClass, enough: 'one' }),
  )
}

/**
 * All premises of a favour together: what is deemed to be met, another class accepted, the class itself.
 * @param lotClass class for limits that depend on it; null where no class is known
 * @returns yes where there are no premises
 * Note: of several results each must meet a premise; where they differ it is open, so that no lenient result among
 * several lets a lot pass.
 */
export function allSurelyHold(
  premises: readonly Premise[],
  evidence: Evidence,
  lotClass: string | null,
): PremiseAnswer {
  return together(premises, evidence, (premise) =>
    propertyUnmet(premise, evidence, { lotClass, enough: 'every' }),
  )
}

function together(
  premises: readonly Premise[],
  evidence: Evidence,
  unmetProperty: (premise: PropertyPremise) => Unmet,
): PremiseAnswer {
  const unmet = premises
    .map((premise) => ('fact' in premise ? factUnmet(premise, evidence) : unmetProperty(premise)))
    .filter((answer) => answer !== undefined)
  return unmet.find((answer) => answer.holds === 'no') ?? unmet[0] ?? { holds: 'yes' }
}

/**
 * The word stated for a fact; undefined where none is.
 * @param fact its name
 */
export function statedFact(fact: string, { facts }: Pick<Evidence, 'facts'>): string | undefined {
  return facts !== undefined && Object.hasOwn(facts, fact) ? facts[fact] : undefined
}

/** What stands against a premise; undefined where it holds. */
type Unmet = Exclude<PremiseAnswer, { holds: 'yes' }> | undefined

function factUnmet({ fact, is }: FactPremise, evidence: Evidence): Unmet {
  const stated = statedFact(fact, evidence)
  if (stated === undefined) return { holds: 'open', because: { code: 'fact-not-stated', params: { fact } } }
  return is.includes(stated)
    ? undefined
    : { holds: 'no', because: { code: 'fact-otherwise', params: { fact, is } } }
}

interface PropertyReading {
  readonly lotClass: string | null
  /** Of several results, how many must meet the premise. */
  readonly enough: 'one' | 'every'
}

function propertyUnmet(
  premise: PropertyPremise,
  evidence: Evidence,
  { lotClass, enough }: PropertyReading,
): Unmet {
  const { property } = premise
  const selection = selectResults(premise, evidence)
  if (selection.found === 'none')
    return {
      holds: 'open',
      because: { code: 'property-not-determined', params: { property, reason: selection.reason } },
    }
  const answers = selection.results.map((result) => answersOf(premise.limits, result, lotClass))
  const isMet = (answer: readonly Answer[]) => answer.every((single) => single === 'met')
  if (enough === 'one' ? answers.some(isMet) : answers.every(isMet)) return undefined
  const params = { property, limits: statedLimits(premise.limits, lotClass) }
  return answers.every((answer) => answer.includes('not-met'))
    ? { holds: 'no', because: { code: 'property-otherwise', params } }
    : { holds: 'open', because: { code: 'property-on-both-sides', params } }
}

/**
 * Answers of one value to every limit; one that does not speak of the class is not met.
 * @param lotClass class for limits that depend on it; null where no class is known
 */
export function answersOf(limits: readonly Limit[], judged: JudgedValue, lotClass: string | null): Answer[] {
  return limits.flatMap((limit): Answer[] => {
    if (limit.operator === 'report') return []
    const quantities = quantitiesFor(limit, lotClass)
    return quantities === undefined
      ? ['not-met']
      : [compareWithLimit(judged, limit.operator, quantities).answer]
  })
}
