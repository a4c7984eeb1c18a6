/** What is enough to ship on early results. */
import { type Clause, type Criterion, everyClause } from '../../core/criteria/criterion.ts'
import { defined } from '../../core/measure/defined.ts'
import { below } from '../yaml/pointer.ts'
import type { CompileContext } from './context.ts'
import { valueScale } from './limit-scale.ts'
import { compileLimits } from './limits.ts'
import type { WrittenCriterion } from './written-criterion.ts'

export function compileRelease(
  context: CompileContext,
  record: WrittenCriterion,
  clauses: readonly Clause[],
): Criterion['release'] {
  return (record.release ?? []).flatMap((entry, index) => {
    const pointer = below('/release', index)
    const clause = [...everyClause(clauses)].find((candidate) => candidate.id === entry.clause)
    if (clause === undefined) {
      context.fault(
        below(pointer, 'clause'),
        'criterion-release-clause',
        `the specification has no clause "${entry.clause}"`,
        'name the id of a clause of this specification',
      )
      return []
    }
    const comparison = [...everyClause([clause])].find((candidate) => candidate.form === 'comparison')
    const limits =
      entry.with === undefined || comparison === undefined
        ? []
        : compileLimits(context, entry.with, valueScale(comparison.property), below(pointer, 'with'))
    return [{ clause: entry.clause, ...defined({ age: entry.with?.age }), limits }]
  })
}
