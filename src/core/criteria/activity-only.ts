/** Sets that judge one side of a material, where a whole specification judges it all. */
import { property } from '../measure/properties.ts'
import { type Criterion, everyClause } from './criterion.ts'

/**
 * Whether a set judges activity and nothing else, so that meeting it says nothing of composition or fineness.
 * @param criterion with one clause or more
 * @returns false for a set that also asks for facts, documents, classes or sampling
 * Note: a set without any clause judges nothing and is none.
 */
export function isActivityOnly({ clauses }: Pick<Criterion, 'clauses'>): boolean {
  const judged = [...everyClause(clauses)].filter(({ form }) => form !== 'group')
  return (
    judged.length > 0 &&
    judged.every((clause) => clause.form === 'comparison' && property(clause.property).group === 'activity')
  )
}
