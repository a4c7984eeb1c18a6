/** Premises of a clause: demands on properties and facts that decide whether something applies. */
import type { Premise, PropertyPremise } from '../../core/criteria/criterion.ts'
import { defined } from '../../core/measure/defined.ts'
import type { PropertyKey } from '../../core/measure/properties.ts'
import { below } from '../yaml/pointer.ts'
import { checkConditionAndAge } from './condition-and-age.ts'
import type { CompileContext } from './context.ts'
import { valueScale } from './limit-scale.ts'
import { compileLimits } from './limits.ts'
import { WRITTEN_OPERATORS, type WrittenOperators, type WrittenPremise } from './written-criterion.ts'

/** @returns the premises that could be read; faults are reported where they stand */
export function compilePremises(
  context: CompileContext,
  written: readonly WrittenPremise[],
  pointer: string,
): Premise[] {
  return written.flatMap((premise, index) => compilePremise(context, premise, below(pointer, index)))
}

function compilePremise(context: CompileContext, written: WrittenPremise, pointer: string): Premise[] {
  const { fact, is } = written
  if (fact !== undefined && is !== undefined && written.property === undefined) return [{ fact, is }]
  if (fact !== undefined || written.property === undefined) {
    context.fault(
      pointer,
      'criterion-premise',
      fact === undefined
        ? 'the premise names neither a property nor a fact'
        : 'the premise on a fact does not list the allowed values, or names a property too',
      'write "property:" with an operator, or "fact:" and "is:" with the allowed values',
    )
    return []
  }
  const asked = defined({ property: written.property, condition: written.condition, age: written.age })
  checkConditionAndAge(context, asked, pointer)
  return [{ ...asked, limits: premiseLimits(context, written, asked.property, pointer) }]
}

/** Limits of a premise or a band: at least one operator, `report` aside. */
export function premiseLimits(
  context: CompileContext,
  written: WrittenOperators,
  key: PropertyKey,
  pointer: string,
): PropertyPremise['limits'] {
  const limits = compileLimits(context, written, valueScale(key), pointer).filter(
    (limit) => limit.operator !== 'report',
  )
  if (
    limits.length === 0 &&
    WRITTEN_OPERATORS.every((operator) => operator === 'report' || written[operator] === undefined)
  ) {
    context.fault(
      pointer,
      'criterion-no-operator',
      'the condition on a property states no limit',
      'add an operator such as "above: 1.5 %"',
    )
  }
  return limits
}
