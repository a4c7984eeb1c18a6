/**
 * Every limit of every set, gathered by the property that it is on: so that sets can be read side by side.
 */
import type { Comparison, Criterion, Group } from '../../core/criteria/criterion.ts'
import { type PropertyKey, PROPERTIES } from '../../core/measure/properties.ts'
import { placedClauses } from './placed-clauses.ts'

export interface PropertyLimit {
  readonly criterion: Criterion
  readonly clause: Comparison
  /** The group that the clause is a member of. */
  readonly group: Group | null
}

/** In the order of the property list; properties without a limit are left out. */
export function limitsByProperty(criteria: Iterable<Criterion>): Map<PropertyKey, PropertyLimit[]> {
  const byProperty = new Map<PropertyKey, PropertyLimit[]>(
    (Object.keys(PROPERTIES) as PropertyKey[]).map((key) => [key, []]),
  )
  for (const criterion of criteria) {
    for (const { clause, group } of placedClauses(criterion.clauses))
      byProperty.get(clause.property)?.push({ criterion, clause, group })
  }
  return new Map([...byProperty].filter(([, limits]) => limits.length > 0))
}

/** The limits on one property by condition, those without one last; in each by age, then as they came. */
export function limitsByCondition(
  limits: readonly PropertyLimit[],
): { readonly condition: string | undefined; readonly limits: readonly PropertyLimit[] }[] {
  const groups = [...Map.groupBy(limits, ({ clause }) => clause.condition)].map(([condition, own]) => ({
    condition,
    limits: own.toSorted((a, b) => hours(a) - hours(b)),
  }))
  return groups.sort((a, b) => Number(a.condition === undefined) - Number(b.condition === undefined))
}

function hours({ clause }: PropertyLimit): number {
  return clause.age?.hours ?? 0
}
