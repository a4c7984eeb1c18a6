/** Clauses of a base, taken over, put in, put in the place of another or taken out, in groups too. */
import {
  type Clause,
  EVERY_CLASS,
  everyClause,
  type Group,
  includesClass,
  partsOfClass,
} from '../../core/criteria/criterion.ts'

/** Clauses of a base as far as they speak of the classes taken over. */
export function takenOver(clauses: readonly Clause[], classes: readonly string[]): readonly Clause[] {
  return clauses.flatMap((clause): Clause[] => {
    if (clause.classes !== undefined && !classes.some((name) => includesClass(clause.classes ?? [], name)))
      return []
    if (clause.form === 'group') return [{ ...clause, members: takenOver(clause.members, classes) }]
    if (clause.form !== 'comparison') return [clause]
    const limits = clause.limits.map((limit) => ({
      ...limit,
      byClass: Object.fromEntries(
        Object.entries(limit.byClass).filter(
          ([name]) => name === EVERY_CLASS || classes.some((one) => partsOfClass(one).includes(name)),
        ),
      ),
    }))
    const kept = limits.filter(
      (limit) => limit.operator === 'report' || Object.keys(limit.byClass).length > 0,
    )
    return kept.length === 0 && clause.limits.length > 0 ? [] : [{ ...clause, limits: kept }]
  })
}

/** A clause by its id, at any depth. */
export function clauseNamed(clauses: readonly Clause[], id: string): Clause | undefined {
  return [...everyClause(clauses)].find((clause) => clause.id === id)
}

/** A group with a changed member no longer rests on its own basis as a whole: each member has its own. */
export function replaced(clauses: readonly Clause[], id: string, by: Clause): readonly Clause[] {
  return clauses.map((clause) => {
    if (clause.id === id) return by
    if (clause.form !== 'group' || clauseNamed(clause.members, id) === undefined) return clause
    return {
      ...(by.changes?.at(-1)?.change === 'promote' ? clause : withoutOrigin(clause)),
      members: replaced(clause.members, id, by),
    } satisfies Group
  })
}

/** The clauses without one, at any depth. */
export function without(clauses: readonly Clause[], id: string): readonly Clause[] {
  return clauses
    .filter((clause) => clause.id !== id)
    .map((clause) => (clause.form === 'group' ? { ...clause, members: without(clause.members, id) } : clause))
}

/** The origin of a limit goes when the limit does. */
export function withoutOrigin<C extends Clause>({
  basis: _basis,
  setBy: _setBy,
  ...clause
}: C): Omit<C, 'basis' | 'setBy'> {
  return clause
}
