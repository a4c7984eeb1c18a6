/** One clause of a criterion record, and the members of a group below it. */
import type { Clause, Comparison, DecisionRule, Group, MaterialKind } from '../core/criterion.ts'
import { isPropertyKey, property, type PropertyKey } from '../core/properties.ts'
import type { QuantityKind } from '../core/units.ts'
import { below, checkClasses, type CompileContext } from './criterion-context.ts'
import { compileLimits } from './criterion-limits.ts'
import { WRITTEN_OPERATORS, type WrittenClause, type WrittenDecisionRule } from './criterion-record.ts'

/** Where a clause stands: its pointer, the id it gets when it names none, and what it takes from the group above. */
export interface Place {
  readonly pointer: string
  readonly givenId?: string
  readonly above?: Pick<Group, 'basis' | 'setBy' | 'decisionRule'>
}

/** @returns the compiled clause; undefined when it cannot be one, with the faults reported */
export function compileClause(context: CompileContext, written: WrittenClause, place: Place): Clause | undefined {
  const { pointer } = place
  if (written.change !== undefined) {
    context.fault(below(pointer, 'change'), 'criterion-extends-not-supported', `"change: ${written.change}" alters a clause of another set, which is not supported yet`, 'write the whole clause in a set of its own')
    return undefined
  }
  const id = written.clause ?? place.givenId
  if (id === undefined) {
    context.fault(pointer, 'criterion-clause-without-id', 'the clause has no id', 'add "clause:" with an id that stays the same in later editions of this record')
    return undefined
  }
  const members = written['any-of'] ?? written['all-of']
  return members === undefined ? compileComparison(context, written, { ...place, id }) : compileGroup(context, written, members, { ...place, id })
}

type NamedPlace = Place & { readonly id: string }

const COMPARISON_KEYS = ['property', 'condition', 'age', 'deviation-from', 'relative', 'several', 'resolution', 'approval', ...WRITTEN_OPERATORS] as const

function compileGroup(context: CompileContext, written: WrittenClause, members: readonly WrittenClause[], place: NamedPlace): Group {
  const { pointer, id } = place
  const mixed = written['any-of'] !== undefined && written['all-of'] !== undefined ? 'all-of' : COMPARISON_KEYS.find((key) => written[key] !== undefined)
  if (mixed !== undefined) context.fault(below(pointer, mixed), 'criterion-group-mixed', `the group ${id} also states "${mixed}"`, 'move it into a member of the group, or make it a clause of its own')
  const combine = written['any-of'] === undefined ? 'all-of' : 'any-of'
  const head = compileHead(context, written, place)
  const compiled = members.map((member, index) => compileClause(context, member, { pointer: below(below(pointer, combine), index), givenId: `${id}-${index + 1}`, above: head }))
  return { ...head, form: 'group', combine, members: compiled.filter((member) => member !== undefined) }
}

function compileHead(context: CompileContext, written: WrittenClause, place: NamedPlace): Omit<Group, 'form' | 'combine' | 'members'> {
  const { pointer, id, above } = place
  if (written.classes !== undefined) checkClasses(context, written.classes, (index) => below(below(pointer, 'classes'), index))
  const when = compileWhen(context, written, pointer)
  const basis = basisOf(written) ?? above?.basis
  const setBy = written['set-by'] ?? above?.setBy
  const decisionRule = written['decision-rule'] === undefined ? above?.decisionRule : compileDecisionRule(context, written['decision-rule'], below(pointer, 'decision-rule'))
  return {
    id, ...present('title', written.title), ...present('classes', written.classes), ...present('kinds', written.kinds as readonly MaterialKind[] | undefined), ...present('when', when),
    optional: written.optional === 'yes', information: written.information === 'yes', ...present('basis', basis), ...present('setBy', setBy), ...present('decisionRule', decisionRule),
    layer: context.id,
  }
}

function basisOf({ basis }: WrittenClause): Group['basis'] {
  if (basis?.read !== undefined) return { read: basis.read }
  return basis?.memory === undefined ? undefined : { memory: basis.memory }
}

function compileWhen(context: CompileContext, { when }: WrittenClause, pointer: string): Comparison['when'] {
  if (when === undefined) return undefined
  const place = below(pointer, 'when')
  const key = propertyKey(when.property)
  if (needsMortar(key)) {
    context.fault(below(place, 'property'), 'criterion-condition-missing', `${key} belongs to a condition and an age, which "when" does not name`, 'let the clause depend on a property of the material itself')
    return undefined
  }
  const limits = compileLimits(context, when, property(key).kind, place).filter((limit) => limit.operator !== 'report')
  if (limits.length === 0 && WRITTEN_OPERATORS.every((operator) => operator === 'report' || when[operator] === undefined)) {
    context.fault(place, 'criterion-no-operator', 'the condition on another property states no limit', 'add an operator such as "above: 1.5 %"')
  }
  return { property: key, limits }
}

/** @returns the rule; as-specified where the record names none or two, with the fault reported */
export function compileDecisionRule(context: CompileContext, { guarded, probability, 'agreed-in': agreedIn }: WrittenDecisionRule, pointer: string): DecisionRule {
  const agreed = present('agreedIn', agreedIn)
  if (guarded !== undefined && probability === undefined) return { rule: 'guarded', k: guarded, ...agreed }
  if (probability !== undefined && guarded === undefined) return { rule: 'probability', p: probability, ...agreed }
  context.fault(pointer, 'criterion-decision-rule', guarded === undefined ? 'the decision rule names neither "guarded" nor "probability"' : 'the decision rule names both "guarded" and "probability"', 'name one of the two, or leave the rule out to judge as specified')
  return { rule: 'as-specified' }
}

function compileComparison(context: CompileContext, written: WrittenClause, place: NamedPlace): Comparison | undefined {
  const { pointer } = place
  const head = compileHead(context, written, place)
  if (written.property === undefined) {
    context.fault(pointer, 'criterion-property-missing', `the clause ${place.id} names no property`, 'add "property:", or "any-of:" or "all-of:" with member clauses')
    return undefined
  }
  const key = propertyKey(written.property)
  checkCondition(context, written, key, pointer)
  const deviation = compileDeviation(context, written, pointer)
  const limits = compileLimits(context, written, limitKind(key, deviation), pointer)
  checkOperator(context, written, limits.length, pointer)
  if (written.resolution !== undefined && !(0 < written.resolution)) {
    context.fault(below(pointer, 'resolution'), 'criterion-resolution', `the rounding step ${written.resolution} is not above zero`, 'write a step such as 0.1, in the unit of the limit')
  }
  return {
    ...head, form: 'comparison', property: key, ...present('condition', written.condition), ...present('age', written.age), limits, ...present('deviation', deviation),
    several: written.several ?? 'worst', ...present('resolution', written.resolution), ...present('approval', compileApproval(context, written, limitKind(key, deviation), pointer)), ...present('method', written.method),
  }
}

/** The schema lets no other name through; a clause dropped without a word would make the set more lenient than its record. */
function propertyKey(name: string): PropertyKey {
  if (!isPropertyKey(name)) throw new RangeError(`propertyKey needs a property of the list, got "${name}"`)
  return name
}

/** Mortar results mean something only at a condition and an age. */
function needsMortar(key: PropertyKey): boolean {
  return ['compressive-strength', 'bulk-resistivity', 'strength-activity-index', 'resistivity-index'].includes(key)
}

function checkCondition(context: CompileContext, { condition, age }: WrittenClause, key: PropertyKey, pointer: string): void {
  if (needsMortar(key) && (condition === undefined || age === undefined)) {
    const missing = condition === undefined ? 'condition' : 'age'
    context.fault(below(pointer, 'property'), 'criterion-condition-missing', `${key} is judged at a condition and an age, and the clause names no ${missing}`, `add "${missing}: ${missing === 'age' ? '28 d' : 'ID'}"`)
  }
  if (condition !== undefined && !context.known.conditions.has(condition)) {
    context.fault(below(pointer, 'condition'), 'criterion-condition-unknown', `there is no condition "${condition}"`, `name one of: ${[...context.known.conditions].sort().join(', ') || 'none is described yet'}`)
  }
}

function compileDeviation(context: CompileContext, written: WrittenClause, pointer: string): Comparison['deviation'] {
  const from = written['deviation-from']
  const relative = written.relative === 'yes'
  if (from === undefined) {
    if (written.relative !== undefined) context.fault(below(pointer, 'relative'), 'criterion-relative-without-deviation', '"relative" needs a reference to be relative to', 'add "deviation-from:", or take "relative" out')
    return undefined
  }
  if (from.preceding !== undefined && Number.isInteger(from.preceding)) return { from: 'preceding', count: from.preceding, relative }
  if (from.declared === 'yes') return { from: 'declared', relative }
  const message = from.control === 'yes' ? 'a deviation from the control is not supported yet'
    : from.preceding === undefined ? 'the deviation names no reference' : `${from.preceding} preceding results is no whole number`
  context.fault(below(pointer, 'deviation-from'), 'criterion-deviation', message, 'write "preceding: 10" or "declared: yes"')
  return undefined
}

/** A deviation of a percentage is in points, a relative one in per cent, any other in the property's own unit. */
function limitKind(key: PropertyKey, deviation: Comparison['deviation']): QuantityKind {
  const { kind } = property(key)
  if (deviation === undefined) return kind
  if (deviation.relative) return 'fraction'
  return kind === 'fraction' ? 'points' : kind === 'temperature' ? 'temperature-difference' : kind
}

function checkOperator(context: CompileContext, written: WrittenClause, compiled: number, pointer: string): void {
  if (0 < compiled || WRITTEN_OPERATORS.some((operator) => operator !== 'report' && written[operator] !== undefined)) return
  context.fault(pointer, 'criterion-no-operator', 'the clause states no limit and asks for no report', 'add an operator such as "at-most: 6.0 %", or "report: yes"')
}

function compileApproval(context: CompileContext, { approval, ...written }: WrittenClause, kind: QuantityKind, pointer: string): Comparison['approval'] {
  if (approval === undefined) return undefined
  const place = below(pointer, 'approval')
  if (approval.classes !== undefined) checkClasses(context, approval.classes, (index) => below(below(place, 'classes'), index))
  const [limit] = compileLimits(context, { ...present('at-least', approval['at-least']), ...present('at-most', approval['at-most']) }, kind, place)
  if (limit === undefined) {
    context.fault(place, 'criterion-no-operator', 'the approval states no outer limit', 'add "at-most:" or "at-least:" with the outer limit')
    return undefined
  }
  if (limit.operator === 'report' || written[limit.operator as 'at-least' | 'at-most'] === undefined) {
    context.fault(below(place, limit.operator), 'criterion-limits-contradict', `the outer limit is "${limit.operator}", and the clause has no plain limit on that side`, 'write the outer limit with the operator of the plain limit')
  }
  return { limit, evidence: approval.evidence, ...present('classes', approval.classes) }
}

/** A member that is left out where it is undefined, so that a compiled clause holds nothing empty. */
export function present<K extends string, V>(key: K, value: V | undefined): { readonly [P in K]?: V } {
  return value === undefined ? {} : { [key]: value } as { [P in K]: V }
}
