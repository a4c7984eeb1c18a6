/** Whether a clause is judged at all: kind of material, class, demand by the purchaser, premises. */
import { type Clause, type Criterion, EVERY_CLASS, includesClass } from '../criteria/criterion.ts'
import type { Evidence } from '../evidence/evidence.ts'
import { type Finding, plainly } from './judged-clause.ts'
import type { Judging } from './judging.ts'
import { listWords, quantitiesFor } from '../../words/limit-words.ts'
import { allHold } from './premises.ts'

/** @param asked judge under this class in place of the claimed one, to find the best class met */
export function judgingOf(criterion: Criterion, evidence: Evidence, asked?: string): Judging {
  if (asked !== undefined) return { criterion, evidence, lotClass: asked }
  return criterion.classFrom === undefined ? claimed(criterion, evidence) : derived(criterion, evidence)
}

/** The claimed class where the set has it; a class of another set is no class here. */
function claimed(criterion: Criterion, evidence: Evidence): Judging {
  const own = claimedClass(criterion, evidence)
  if (own !== null && criterion.classes.includes(own)) return { criterion, evidence, lotClass: own }
  const classes = listWords(criterion.classes, 'or')
  return {
    criterion,
    evidence,
    lotClass: null,
    noClass:
      own === null
        ? `no class claimed, and the limit depends on it (${classes})`
        : `the claimed class ${own} is none of this set's (${classes})`,
  }
}

/** The class claimed under the set, a layer below it, or in general. */
export function claimedClass(criterion: Criterion, evidence: Evidence): string | null {
  const layer = criterion.layers.findLast(
    ({ id }) => evidence.classUnder !== undefined && Object.hasOwn(evidence.classUnder, id),
  )
  return (layer === undefined ? undefined : evidence.classUnder?.[layer.id]) ?? evidence.class
}

function derived(criterion: Criterion, evidence: Evidence): Judging {
  for (const entry of criterion.classFrom ?? []) {
    const answer = allHold(entry.where, evidence, null)
    if (answer.holds === 'yes') return { criterion, evidence, lotClass: entry.class }
    if (answer.holds === 'open')
      return {
        criterion,
        evidence,
        lotClass: null,
        noClass: `the class follows from the material and cannot be decided: ${answer.because}`,
      }
  }
  return { criterion, evidence, lotClass: null, noClass: 'the material falls into no class of this set' }
}

/** Why a clause is not judged; undefined when it is. */
export function outOfScope(
  clause: Clause,
  { criterion, evidence, lotClass, noClass }: Judging,
): Finding | undefined {
  if (clause.kinds !== undefined && !clause.kinds.includes(evidence.kind))
    return plainly('not-applicable', 'for other kinds of material')
  if (lotClass !== null && !speaksOf(clause, lotClass))
    return plainly('not-applicable', `not for class ${lotClass}`)
  if (clause.optional && !isRequested(clause, criterion, evidence))
    return plainly('not-invoked', 'optional, not asked for by the purchaser')
  if (lotClass === null && dependsOnClass(clause))
    return plainly('not-reported', noClass ?? 'no class is known')
  return clause.when === undefined ? undefined : premiseUnmet(clause.when, evidence, lotClass)
}

/** A purchaser asks for a clause of the set itself or of a layer below it. */
function isRequested(clause: Clause, criterion: Criterion, { requested }: Evidence): boolean {
  return (
    requested !== undefined &&
    criterion.layers.some(({ id }) => Object.hasOwn(requested, id) && requested[id]?.includes(clause.id))
  )
}

function dependsOnClass(clause: Clause): boolean {
  if (clause.classes !== undefined) return true
  return (
    clause.form === 'comparison' &&
    clause.limits.some((limit) => limit.operator !== 'report' && !Object.hasOwn(limit.byClass, EVERY_CLASS))
  )
}

function speaksOf(clause: Clause, lotClass: string): boolean {
  if (clause.classes !== undefined && !includesClass(clause.classes, lotClass)) return false
  if (clause.form !== 'comparison' || clause.limits.length === 0) return true
  return clause.limits.some(
    (limit) => limit.operator === 'report' || quantitiesFor(limit, lotClass) !== undefined,
  )
}

function premiseUnmet(
  premises: NonNullable<Clause['when']>,
  evidence: Evidence,
  lotClass: string | null,
): Finding | undefined {
  const answer = allHold(premises, evidence, lotClass)
  if (answer.holds === 'yes') return undefined
  return answer.holds === 'no'
    ? plainly('not-applicable', `applies only where ${answer.because}`)
    : plainly('not-reported', `applies by ${answer.because}`)
}
