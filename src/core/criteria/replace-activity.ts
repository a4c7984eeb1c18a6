/** A set with its demand on activity replaced by another set's: what if the lots had been judged so. */
import { property } from '../measure/properties.ts'
import { type Clause, type Comparison, type Criterion, EVERY_CLASS } from './criterion.ts'

/**
 * A set whose activity clauses stand in for those of another one.
 * @param governing the set judged today
 * @param other the set whose demand on activity is taken
 * @returns a set of its own, for the kinds of material of both; null where either has no clause of its own on
 * activity, where no kind is common to both, or where the other's demand depends on a class that the governing
 * set does not have
 * Notes: 1. a clause that is optional, for information, a report or about uniformity is no demand on activity, and
 * stays; 2. the clauses taken over keep their own decision rule and layer, so that the set is unconfirmed where
 * they are; 3. its id joins both by "+", which no id of a record holds; 4. it belongs to no contract: a verdict
 * under it answers a question and judges nobody.
 */
export function withActivityOf(governing: Criterion, other: Criterion): Criterion | null {
  const taken = other.clauses.filter(demandsActivity)
  const place = governing.clauses.findIndex(demandsActivity)
  const kinds = governing.kinds.filter((kind) => other.kinds.includes(kind))
  if (place < 0 || taken.length === 0 || kinds.length === 0) return null
  if (!taken.every((clause) => holdsForEveryClass(clause, governing.classes))) return null
  const kept = (clause: Clause) => !demandsActivity(clause)
  const gone = new Set(governing.clauses.filter(demandsActivity).flatMap(idsWithin))
  const ids = new Set(governing.clauses.flatMap(idsWithin).filter((id) => !gone.has(id)))
  return {
    ...governing,
    id: `${governing.id}+${other.id}`,
    kinds,
    clauses: [
      ...governing.clauses.slice(0, place).filter(kept),
      ...taken.map((clause) => underOwnRule(clause, other, ids)),
      ...governing.clauses.slice(place).filter(kept),
    ],
    release: governing.release.filter(({ clause }) => ids.has(clause)),
    layers: [
      ...other.layers.filter(({ id }) => !governing.layers.some((own) => own.id === id)),
      ...governing.layers,
    ],
    activityOf: { id: other.id, title: other.title, edition: other.edition, ...designated(other) },
  }
}

/** A lot cannot meet the set without activity of this kind: alternatives and joint demands of nothing else count. */
function demandsActivity(clause: Clause): boolean {
  if (clause.optional || clause.information) return false
  if (clause.form === 'group') return clause.members.length > 0 && clause.members.every(demandsActivity)
  return clause.form === 'comparison' && limitsActivity(clause)
}

function limitsActivity({ property: key, limits, deviation, statistic }: Comparison): boolean {
  return (
    property(key).group === 'activity' &&
    deviation === undefined &&
    statistic?.of !== 'variability' &&
    limits.some(({ operator }) => operator !== 'report')
  )
}

/** Else a lot of a class that the clause is silent on would meet it without any activity. */
function holdsForEveryClass(clause: Clause, classes: readonly string[]): boolean {
  if (clause.classes !== undefined) return false
  if (clause.form === 'group') return clause.members.every((member) => holdsForEveryClass(member, classes))
  if (clause.form !== 'comparison') return true
  return clause.limits.every(
    ({ operator, byClass }) =>
      operator === 'report' ||
      Object.hasOwn(byClass, EVERY_CLASS) ||
      (classes.length > 0 && classes.every((name) => Object.hasOwn(byClass, name))),
  )
}

/** An id that the governing set uses for another clause is told apart by the other set's. */
function underOwnRule(clause: Clause, other: Criterion, taken: ReadonlySet<string>): Clause {
  const own = {
    id: taken.has(clause.id) ? `${other.id}+${clause.id}` : clause.id,
    decisionRule: clause.decisionRule ?? other.decisionRule,
  }
  return clause.form === 'group'
    ? { ...clause, ...own, members: clause.members.map((member) => underOwnRule(member, other, taken)) }
    : { ...clause, ...own }
}

function idsWithin(clause: Clause): string[] {
  return clause.form === 'group' ? [clause.id, ...clause.members.flatMap(idsWithin)] : [clause.id]
}

function designated({ designation }: Criterion): Pick<Criterion, 'designation'> {
  return designation === undefined ? {} : { designation }
}
