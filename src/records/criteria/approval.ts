/** The outer limit of a clause, up to which a value may go by approval or declaration. */
import type { Approval } from '../../core/criteria/criterion.ts'
import { defined } from '../../core/measure/defined.ts'
import { below } from '../yaml/pointer.ts'
import { checkClasses, type CompileContext } from './context.ts'
import type { LimitScale } from './limit-scale.ts'
import { compileLimits } from './limits.ts'
import type { WrittenClause } from './written-criterion.ts'

/**
 * @param written the clause with its approval and its plain limits
 * @param scale of the limits of the clause
 * @returns undefined where the clause has no approval, or its outer limit could not be read
 */
export function compileApproval(
  context: CompileContext,
  { approval, ...written }: WrittenClause,
  scale: LimitScale,
  pointer: string,
): Approval | undefined {
  if (approval === undefined) return undefined
  const at = below(pointer, 'approval')
  if (approval.classes !== undefined) checkClasses(context, approval.classes, below(at, 'classes'))
  const outer = defined({ 'at-least': approval['at-least'], 'at-most': approval['at-most'] })
  const [limit, second] = compileLimits(context, outer, scale, at)
  if (second !== undefined)
    context.fault(
      below(at, second.operator),
      'criterion-limits-contradict',
      'the approval states two outer limits, and a value lies beyond one plain limit only',
      'keep one of them, and write a clause of its own for the other side',
    )
  if (limit === undefined) {
    context.fault(
      at,
      'criterion-no-operator',
      'the approval states no outer limit',
      'add "at-most:" or "at-least:" with the outer limit',
    )
    return undefined
  }
  if (limit.operator === 'report' || written[limit.operator] === undefined) {
    context.fault(
      below(at, limit.operator),
      'criterion-limits-contradict',
      `the outer limit is "${limit.operator}", but the clause has no plain limit on that side`,
      'write the outer limit with the operator of the plain limit',
    )
  }
  const { evidence, classes, by = 'approval' } = approval
  return { limit, evidence, ...defined({ classes }), by }
}
