/** Whether a clause is judged at all: kind of material, class, demand by the purchaser, premises. */
import {
  type Clause,
  type Criterion,
  EVERY_CLASS,
  everyClause,
  includesClass,
} from '../criteria/criterion.ts'
import { quantitiesFor } from '../criteria/limits-for-class.ts'
import type { Evidence } from '../evidence/evidence.ts'
import { type ClauseJudgement, judgement } from './judged-clause.ts'
import type { ClassJudgedBy, Judging } from './judging.ts'
import { allHold, allSurelyHold } from './premises.ts'

/**
 * A lot under a set, with the class it is judged by or why there is none.
 * @param asked judge under this class in place of the claimed one, to find the best class met
 */
export function judgingOf(criterion: Criterion, evidence: Evidence, asked?: string): Judging {
  if (asked !== undefined) return { criterion, evidence, lotClass: asked }
  const by = criterion.classFrom === undefined ? claimed(criterion, evidence) : derived(criterion, evidence)
  return { criterion, evidence, ...by }
}

/** The claimed class where the set has it; a class of another set is no class here. */
function claimed(criterion: Criterion, evidence: Evidence): ClassJudgedBy {
  const own = claimedClass(criterion, evidence)
  const { classes } = criterion
  if (own === null) return { lotClass: null, noClass: { code: 'no-class-claimed', params: { classes } } }
  return classes.includes(own)
    ? { lotClass: own }
    : { lotClass: null, noClass: { code: 'class-of-another-set', params: { class: own, classes } } }
}

/**
 * The class claimed under the set, a layer below it, or in general.
 * @returns null where none is claimed
 */
export function claimedClass(
  criterion: Criterion,
  evidence: Pick<Evidence, 'class' | 'classUnder'>,
): string | null {
  const { classUnder = {} } = evidence
  const layer = criterion.layers.findLast(({ id }) => Object.hasOwn(classUnder, id))
  return (layer === undefined ? undefined : classUnder[layer.id]) ?? evidence.class
}

/** The first class whose premises hold; one that is open leaves the class open. */
function derived(criterion: Criterion, evidence: Evidence): ClassJudgedBy {
  for (const entry of criterion.classFrom ?? []) {
    const answer = allSurelyHold(entry.where, evidence, null)
    if (answer.holds === 'yes') return { lotClass: entry.class }
    if (answer.holds === 'open')
      return {
        lotClass: null,
        noClass: { code: 'class-not-determined', params: { because: answer.because } },
      }
  }
  return { lotClass: null, noClass: { code: 'class-none-fits', params: {} } }
}

/** Why a clause is not judged; undefined when it is. */
export function outOfScope(clause: Clause, judging: Judging): ClauseJudgement | undefined {
  const { criterion, evidence } = judging
  if (clause.kinds !== undefined && !clause.kinds.includes(evidence.kind))
    return judgement('not-applicable', { code: 'other-material', params: {} })
  if (judging.lotClass !== null && !speaksOf(clause, judging.lotClass))
    return judgement('not-applicable', { code: 'other-class', params: { class: judging.lotClass } })
  if (clause.optional && !isRequested(clause, criterion, evidence))
    return judgement('not-invoked', { code: 'not-requested', params: {} })
  if (judging.lotClass === null && dependsOnClass(clause)) return judgement('not-reported', judging.noClass)
  return clause.when === undefined ? undefined : premiseUnmet(clause.when, judging)
}

/** A purchaser asks for a clause of the set itself or of a layer below it. */
function isRequested(clause: Clause, criterion: Criterion, { requested = {} }: Evidence): boolean {
  return Object.entries(requested).some(
    ([set, clauses]) => clauses.includes(clause.id) && criterion.layers.some(({ id }) => id === set),
  )
}

/** Whether a lot without a class goes unjudged under a demand of the set; a class that results decide is no claim. */
export function asksForClass({ classFrom, clauses }: Pick<Criterion, 'classFrom' | 'clauses'>): boolean {
  if (classFrom !== undefined) return false
  return clauses.some((clause) => !clause.information && !clause.optional && anyDependsOnClass(clause))
}

function anyDependsOnClass(clause: Clause): boolean {
  return [...everyClause([clause])].some(dependsOnClass)
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
  { evidence, lotClass }: Judging,
): ClauseJudgement | undefined {
  const answer = allHold(premises, evidence, lotClass)
  if (answer.holds === 'yes') return undefined
  const params = { because: answer.because }
  return answer.holds === 'no'
    ? judgement('not-applicable', { code: 'premise-not-met', params })
    : judgement('not-reported', { code: 'premise-not-determined', params })
}
