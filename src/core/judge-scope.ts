/** Whether a clause is judged at all: kind of material, class, demand by the purchaser, condition on another property. */
import { compareWithLimit } from './compare.ts'
import type { Clause, Criterion, Limit } from './criterion.ts'
import { EVERY_CLASS } from './criterion.ts'
import type { Evidence } from './evidence.ts'
import { type Finding, plainly } from './judged-clause.ts'
import { limitWords, listWords, quantitiesFor } from './limit-words.ts'
import { propertyWords, selectResults } from './select-result.ts'

/** Why a clause is not judged; undefined when it is. */
export function outOfScope(clause: Clause, criterion: Criterion, evidence: Evidence): Finding | undefined {
  if (clause.kinds !== undefined && !clause.kinds.includes(evidence.kind)) return plainly('not-applicable', 'for other kinds of material')
  const known = knownClass(criterion, evidence)
  const otherClass = known !== null && !speaksOf(clause, known)
  if (otherClass) return plainly('not-applicable', `not for class ${known}`)
  if (clause.optional && !evidence.requested?.has(clause.id)) return plainly('not-invoked', 'optional, not asked for by the purchaser')
  if (known === null && dependsOnClass(clause)) return plainly('not-reported', noClass(criterion, evidence))
  return clause.when === undefined ? undefined : whenUnmet(clause.when, evidence, known)
}

/** The claimed class where the set has it; a class of another set is no class here. */
export function knownClass(criterion: Criterion, evidence: Evidence): string | null {
  return evidence.class !== null && criterion.classes.includes(evidence.class) ? evidence.class : null
}

function noClass(criterion: Criterion, evidence: Evidence): string {
  const classes = listWords(criterion.classes, 'or')
  return evidence.class === null ? `no class claimed, and the limit depends on it (${classes})` : `the claimed class ${evidence.class} is none of this set's (${classes})`
}

function dependsOnClass(clause: Clause): boolean {
  if (clause.classes !== undefined) return true
  return clause.form === 'comparison' && clause.limits.some((limit) => limit.operator !== 'report' && !Object.hasOwn(limit.byClass, EVERY_CLASS))
}

function speaksOf(clause: Clause, lotClass: string): boolean {
  if (clause.classes !== undefined && !clause.classes.includes(lotClass)) return false
  return clause.form === 'group' || clause.limits.some((limit) => limit.operator === 'report' || quantitiesFor(limit, lotClass) !== undefined)
}

function whenUnmet(when: NonNullable<Clause['when']>, evidence: Evidence, lotClass: string | null): Finding | undefined {
  const selection = selectResults(when, evidence)
  const named = propertyWords(when)
  if (selection.found === 'none') return plainly('not-reported', `applies by ${named}, which cannot be decided: ${selection.reason}`)
  const answers = selection.results.map((result) => answersOf(when.limits, result, lotClass))
  // With several results the clause applies as soon as one of them says so: the stricter reading.
  if (answers.some((answer) => answer.every((single) => single === 'met'))) return undefined
  if (answers.every((answer) => answer.includes('not-met'))) return plainly('not-applicable', `applies only where ${named} is ${conditionWords(when.limits, lotClass)}`)
  return plainly('not-reported', `applies by ${named}, which cannot be decided: a censored result lies on both sides of ${conditionWords(when.limits, lotClass)}`)
}

function answersOf(limits: readonly Limit[], result: { value: number; censored?: 'below' }, lotClass: string | null): string[] {
  return limits.flatMap((limit) => {
    const quantities = quantitiesFor(limit, lotClass)
    if (limit.operator === 'report') return []
    return quantities === undefined ? ['not-met'] : [compareWithLimit(result, limit.operator, quantities).answer]
  })
}

function conditionWords(limits: readonly Limit[], lotClass: string | null): string {
  return listWords(limits.map((limit) => limitWords(limit.operator, quantitiesFor(limit, lotClass) ?? [])), 'and')
}
