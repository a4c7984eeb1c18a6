/** Small parts that every form of clause is compiled from. */
import { isPropertyKey, type PropertyKey } from '../../core/measure/properties.ts'
import { INDEX_OF, RATIO_OF } from '../../core/measure/ratio-indices.ts'
import { below, type CompileContext } from './context.ts'

/** A member that is left out where it is undefined, so that a compiled clause holds nothing empty. */
export function present<K extends string, V>(key: K, value: V | undefined): { readonly [P in K]?: V } {
  return value === undefined ? {} : ({ [key]: value } as { [P in K]: V })
}

/**
 * The schema lets no other name through; a clause dropped without a word would make the set more lenient than
 * its record.
 */
export function propertyKey(name: string): PropertyKey {
  if (!isPropertyKey(name)) throw new RangeError(`propertyKey needs a property of the list, got "${name}"`)
  return name
}

/** Mortar results mean something only at a condition and an age. */
function needsMortar(key: PropertyKey): boolean {
  return key in RATIO_OF || key in INDEX_OF
}

/** Reports a mortar result without its condition or age, and a condition that no record describes. */
export function checkCondition(
  context: CompileContext,
  { condition, age }: { readonly condition?: string; readonly age?: string },
  key: PropertyKey,
  pointer: string,
): void {
  if (needsMortar(key) && (condition === undefined || age === undefined)) {
    const missing = condition === undefined ? 'condition' : 'age'
    context.fault(
      below(pointer, 'property'),
      'criterion-condition-missing',
      `${key} is judged at a condition and an age, and the clause names no ${missing}`,
      `add "${missing}: ${missing === 'age' ? '28 d' : 'ID'}"`,
    )
  }
  if (condition !== undefined && !context.known.conditions.has(condition)) {
    context.fault(
      below(pointer, 'condition'),
      'criterion-condition-unknown',
      `there is no condition "${condition}"`,
      `name one of: ${[...context.known.conditions].sort().join(', ') || 'none is described yet'}`,
    )
  }
}
