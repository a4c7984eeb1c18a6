/** Sets that the program ships and a site does not have: the bench offers them beside the site's own. */
import { everyClause } from '../../core/criteria/criterion.ts'
import type { Edition } from './edition.ts'

/** Those for a material of the site's sources, with the conditions of their clauses that the site does not have either. */
export function shippedSets({
  shipped,
  criteria,
  conditions,
  sources,
}: Pick<Edition, 'shipped' | 'criteria' | 'conditions' | 'sources'>): NonNullable<Edition['shipped']> {
  const kinds = new Set([...sources.values()].map(({ kind }) => kind))
  const others = [...(shipped?.criteria ?? [])].filter(
    ([id, set]) => !criteria.has(id) && set.kinds.some((kind) => kinds.has(kind)),
  )
  const named = new Set(
    others.flatMap(([, set]) =>
      [...everyClause(set.clauses)].flatMap((clause) =>
        clause.form === 'comparison' ? (clause.condition ?? []) : [],
      ),
    ),
  )
  return {
    criteria: new Map(others),
    conditions: new Map(
      [...(shipped?.conditions ?? [])].filter(([id]) => named.has(id) && !conditions.has(id)),
    ),
  }
}
