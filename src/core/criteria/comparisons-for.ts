/** The comparisons of a set that speak of one class and kind of material. */
import type { MaterialKind } from '../measure/material-kind.ts'
import { type Clause, type Comparison, includesClass } from './criterion.ts'

/** Whom clauses are asked about: those for other classes or kinds of material say nothing. */
export interface ClauseScope {
  readonly class: string | null
  readonly kind: MaterialKind
}

/**
 * Comparisons that speak of a class and kind, members of groups among them. A group for another class or kind
 * takes its members with it, which name neither themselves.
 * @param clauses of a set, in reading order
 */
export function comparisonsFor(clauses: readonly Clause[], scope: ClauseScope): Comparison[] {
  return clauses
    .filter((clause) => speaksOf(clause, scope))
    .flatMap((clause) =>
      clause.form === 'group'
        ? comparisonsFor(clause.members, scope)
        : clause.form === 'comparison'
          ? [clause]
          : [],
    )
}

/** Judging asks the same: without a class, a clause for named classes is not judged. */
function speaksOf({ classes, kinds }: Clause, scope: ClauseScope): boolean {
  if (kinds !== undefined && !kinds.includes(scope.kind)) return false
  return classes === undefined || (scope.class !== null && includesClass(classes, scope.class))
}
