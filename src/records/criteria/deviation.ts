/** The reference that a clause compares a value with, in place of the value itself. */
import type { Deviation } from '../../core/criteria/criterion.ts'
import { below } from '../yaml/pointer.ts'
import type { CompileContext } from './context.ts'
import type { WrittenClause } from './written-criterion.ts'

/** @returns the deviation; undefined where the clause is on the value itself, or its reference is at fault */
export function compileDeviation(
  context: CompileContext,
  written: WrittenClause,
  pointer: string,
): Deviation | undefined {
  const from = written['deviation-from']
  if (from === undefined) {
    if (written.relative !== undefined)
      context.fault(
        below(pointer, 'relative'),
        'criterion-relative-without-deviation',
        '"relative" needs a reference to be relative to',
        'add "deviation-from:", or remove "relative"',
      )
    return undefined
  }
  const relative = written.relative === 'yes'
  if (from.preceding !== undefined && Number.isInteger(from.preceding))
    return { from: 'preceding', count: from.preceding, relative }
  if (from.declared === 'yes') return { from: 'declared', relative }
  if (from.control === 'yes') return { from: 'control', relative }
  context.fault(
    below(pointer, 'deviation-from'),
    'criterion-deviation',
    from.preceding === undefined
      ? 'the deviation names no reference'
      : `${from.preceding} is not a whole number of preceding results`,
    'write "preceding: 10", "declared: yes" or "control: yes"',
  )
  return undefined
}
