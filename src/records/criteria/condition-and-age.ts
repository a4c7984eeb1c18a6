/** The condition and the age at which a clause or a premise asks for a property. */
import type { Age } from '../../core/measure/age.ts'
import type { PropertyKey } from '../../core/measure/properties.ts'
import { isMortarResult } from '../../core/measure/ratio-indices.ts'
import { below } from '../yaml/pointer.ts'
import type { CompileContext } from './context.ts'

interface AskedFor {
  readonly property: PropertyKey
  readonly condition?: string
  readonly age?: Age
}

/** Reports a mortar result without its condition or age, and a condition that no record describes. */
export function checkConditionAndAge(
  context: CompileContext,
  { property, condition, age }: AskedFor,
  pointer: string,
): void {
  if (isMortarResult(property) && (condition === undefined || age === undefined)) {
    const missing = condition === undefined ? 'condition' : 'age'
    context.fault(
      below(pointer, 'property'),
      'criterion-condition-missing',
      `${property} is judged at a condition and an age, but the clause names no ${missing}`,
      `add "${missing}: ${missing === 'age' ? '28 d' : 'ID'}"`,
    )
  }
  if (condition !== undefined && !context.others.conditions.has(condition)) {
    context.fault(
      below(pointer, 'condition'),
      'criterion-condition-unknown',
      `there is no condition "${condition}"`,
      `name one of: ${[...context.others.conditions].sort().join(', ') || 'none is described yet'}`,
    )
  }
}
