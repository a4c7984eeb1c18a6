/** Clauses that hold a property against a limit, each with the groups that it stands in. */
import type { Clause, Comparison, Group } from '../../core/criteria/criterion.ts'
import { defined } from '../../core/measure/defined.ts'

export interface PlacedClause {
  /** With the classes of its groups as well as its own: a member of a group for class C is for no other. */
  readonly clause: Comparison
  /** The group that it is a member of; null outside of any. */
  readonly group: Group | null
}

/** In reading order, members in the place of their group. */
export function placedClauses(clauses: readonly Clause[], group: Group | null = null): PlacedClause[] {
  return clauses.flatMap((clause): PlacedClause[] => {
    const classes = classesOf(clause.classes, group?.classes)
    if (clause.form === 'group') return placedClauses(clause.members, defined({ ...clause, classes }))
    return clause.form === 'comparison' ? [{ clause: defined({ ...clause, classes }), group }] : []
  })
}

function classesOf(
  own: readonly string[] | undefined,
  outer: readonly string[] | undefined,
): readonly string[] | undefined {
  if (own === undefined || outer === undefined) return own ?? outer
  return own.filter((name) => outer.includes(name))
}
