/** Names within a set: ids of its clauses, titles of its classes, the set of a later edition. */
import { type Clause, everyClause } from '../../core/criteria/criterion.ts'
import { shortened } from '../schema/schema-words.ts'
import { below } from '../yaml/pointer.ts'
import type { CompileContext } from './context.ts'
import type { AddedClause } from './supplement.ts'
import type { WrittenCriterion } from './written-criterion.ts'

/**
 * Ids are told apart without regard to case, as all ids of the records are; of two, the one that this record
 * added is told.
 */
export function checkIds(
  context: CompileContext,
  clauses: readonly Clause[],
  added: readonly AddedClause[],
): void {
  const times = new Map<string, number>()
  for (const { id } of everyClause(clauses))
    times.set(id.toLowerCase(), (times.get(id.toLowerCase()) ?? 0) + 1)
  const told = new Set<string>()
  for (const { clause, pointer } of added.toReversed()) {
    for (const { id } of everyClause([clause])) {
      const key = id.toLowerCase()
      if ((times.get(key) ?? 0) < 2 || told.has(key)) continue
      told.add(key)
      context.fault(
        pointer,
        'criterion-clause-duplicate',
        `the clause id "${id}" is used twice in the specification`,
        'give one of the two another id',
      )
    }
  }
}

export function checkNames(context: CompileContext, record: WrittenCriterion): void {
  const later = record['superseded-by']
  if (later !== undefined && !context.others.criteria.has(later)) {
    context.fault(
      '/superseded-by',
      'criterion-superseded-by-unknown',
      `there is no criterion "${later}"`,
      `name one of: ${[...context.others.criteria].sort().join(', ')}`,
    )
  }
  for (const name of Object.keys(record['class-titles'] ?? {})) {
    if (!context.classes.includes(name) && !context.categories.includes(name))
      context.fault(
        below('/class-titles', name),
        'criterion-class-unknown',
        `the specification has no class "${shortened(name)}"`,
        'add it to "classes", or remove its title',
      )
  }
}
