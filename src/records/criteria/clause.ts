/** One clause of a criterion record, whatever its form, and the members of a group below it. */
import type { MaterialKind } from '../../core/measure/material-kind.ts'
import type {
  Approval,
  Band,
  Basis,
  Clause,
  Comparison,
  DecisionRule,
  Deviation,
  Frequency,
  Group,
  SamplingClause,
} from '../../core/criteria/criterion.ts'
import type { Resolution } from '../../core/judging/compare-with-limit.ts'
import { property, type PropertyKey } from '../../core/measure/properties.ts'
import type { QuantityKind } from '../../core/measure/units.ts'
import { below, checkClasses, type CompileContext } from './context.ts'
import { compileLimits } from './limits.ts'
import { checkCondition, present, propertyKey } from './parts.ts'
import { compilePremises, premiseLimits } from './premise.ts'
import {
  WRITTEN_OPERATORS,
  type WrittenClause,
  type WrittenDecisionRule,
  type WrittenFrequency,
} from './written-criterion.ts'
import { compileStatistic } from './statistic.ts'

/**
 * Where a clause stands: its pointer, the id it gets when it names none, and what it takes from the group
 * above.
 */
export interface Place {
  readonly pointer: string
  readonly givenId?: string
  readonly above?: Pick<Group, 'basis' | 'setBy' | 'decisionRule'>
}

type NamedPlace = Place & { readonly id: string }

const FORMS = ['any-of', 'all-of', 'property', 'fact', 'document', 'allowed-classes', 'sampling'] as const

/** @returns the compiled clause; undefined when it cannot be one, with the faults reported */
export function compileClause(
  context: CompileContext,
  written: WrittenClause,
  place: Place,
): Clause | undefined {
  const { pointer } = place
  const id = written.clause ?? place.givenId
  if (id === undefined) {
    context.fault(
      pointer,
      'criterion-clause-without-id',
      'the clause has no id',
      'add "clause:" with an id that stays the same in later editions of this record',
    )
    return undefined
  }
  checkOneForm(context, written, id, pointer)
  return compileForm(context, written, { ...place, id })
}

function compileForm(context: CompileContext, written: WrittenClause, place: NamedPlace): Clause | undefined {
  const { pointer } = place
  const members = written['any-of'] ?? written['all-of']
  if (members !== undefined) return compileGroup(context, written, members, place)
  if (written.property !== undefined)
    return compileComparison(context, { ...written, property: written.property }, place)
  const head = compileHead(context, written, place)
  if (written.fact !== undefined)
    return compileFact(context, { ...written, fact: written.fact }, head, pointer)
  if (written.document !== undefined)
    return { ...head, form: 'document', document: written.document, voidOn: written['void-on'] ?? [] }
  if (written['allowed-classes'] !== undefined)
    return compileAllowed(context, written, written['allowed-classes'], head, pointer)
  if (written.sampling !== undefined)
    return { ...head, ...compileSampling(context, written.sampling, below(pointer, 'sampling')) }
  context.fault(
    pointer,
    'criterion-property-missing',
    `the clause ${place.id} names no property`,
    'add "property:", or "any-of:" or "all-of:" with member clauses',
  )
  return undefined
}

const COMPARISON_KEYS = [
  'condition',
  'age',
  'deviation-from',
  'relative',
  'several',
  'resolution',
  'approval',
  'deemed-by',
  'band',
  'statistic',
  ...WRITTEN_OPERATORS,
] as const

function checkOneForm(context: CompileContext, written: WrittenClause, id: string, pointer: string): void {
  const forms = FORMS.filter((form) => written[form] !== undefined)
  const extra =
    forms.length > 1
      ? forms[1]
      : written.property === undefined
        ? COMPARISON_KEYS.find((key) => written[key] !== undefined)
        : undefined
  if (extra === undefined || forms.length === 0) return
  const what =
    forms[0] === 'any-of' || forms[0] === 'all-of' ? `the group ${id}` : `the clause ${id}, on ${forms[0]},`
  context.fault(
    below(pointer, extra),
    'criterion-group-mixed',
    `${what} also states "${extra}"`,
    'move it into a member of a group, or make it a clause of its own',
  )
}

function compileGroup(
  context: CompileContext,
  written: WrittenClause,
  members: readonly WrittenClause[],
  place: NamedPlace,
): Group {
  const { pointer, id } = place
  const combine = written['any-of'] === undefined ? 'all-of' : 'any-of'
  const head = compileHead(context, written, place)
  const compiled = members.map((member, index) =>
    compileClause(context, member, {
      pointer: below(below(pointer, combine), index),
      givenId: `${id}-${index + 1}`,
      above: head,
    }),
  )
  return { ...head, form: 'group', combine, members: compiled.filter((member) => member !== undefined) }
}

type Head = Omit<Group, 'form' | 'combine' | 'members'>

function compileHead(context: CompileContext, written: WrittenClause, place: NamedPlace): Head {
  const { pointer, id, above } = place
  if (written.classes !== undefined)
    checkClasses(context, written.classes, (index) => below(below(pointer, 'classes'), index))
  const when =
    written.when === undefined ? undefined : compilePremises(context, written.when, below(pointer, 'when'))
  const basis = basisOf(written) ?? above?.basis
  const setBy = written['set-by'] ?? above?.setBy
  const decisionRule =
    written['decision-rule'] === undefined
      ? above?.decisionRule
      : compileDecisionRule(context, written['decision-rule'], below(pointer, 'decision-rule'))
  return {
    id,
    ...present('title', written.title),
    ...present('classes', written.classes),
    ...present('kinds', written.kinds as readonly MaterialKind[] | undefined),
    ...present('when', when),
    optional: written.optional === 'yes',
    information: written.information === 'yes',
    ...present('basis', basis),
    ...present('setBy', setBy),
    ...present('decisionRule', decisionRule),
    layer: context.id,
  }
}

export function basisOf({ basis }: WrittenClause): Basis | undefined {
  if (basis?.read !== undefined) return { read: basis.read }
  return basis?.memory === undefined ? undefined : { memory: basis.memory }
}

/** @returns the rule; as-specified where the record names none or two, with the fault reported */
export function compileDecisionRule(
  context: CompileContext,
  { guarded, probability, 'agreed-in': agreedIn }: WrittenDecisionRule,
  pointer: string,
): DecisionRule {
  const agreed = present('agreedIn', agreedIn)
  if (guarded !== undefined && probability === undefined) return { rule: 'guarded', k: guarded, ...agreed }
  if (probability !== undefined && guarded === undefined)
    return { rule: 'probability', p: probability, ...agreed }
  context.fault(
    pointer,
    'criterion-decision-rule',
    guarded === undefined
      ? 'the decision rule names neither "guarded" nor "probability"'
      : 'the decision rule names both "guarded" and "probability"',
    'name one of the two, or leave the rule out to judge as specified',
  )
  return { rule: 'as-specified' }
}

function compileComparison(
  context: CompileContext,
  written: WrittenClause & { readonly property: string },
  place: NamedPlace,
): Comparison {
  const { pointer } = place
  const head = compileHead(context, written, place)
  const key = propertyKey(written.property)
  checkCondition(context, written, key, pointer)
  const deviation = compileDeviation(context, written, pointer)
  const kind = limitKind(key, deviation)
  const limits = compileLimits(context, written, kind, pointer)
  const bands = compileBands(context, written, key, pointer)
  const statistic = compileStatistic(context, written, deviation, pointer)
  const held = limits.filter((limit) => limit.operator !== 'report')
  if (bands !== undefined && 0 < held.length)
    context.fault(
      below(pointer, 'band'),
      'criterion-limits-contradict',
      'the clause classifies and holds a limit at once',
      'make the classification a clause of its own',
    )
  if (statistic !== undefined && statistic.of !== 'variability' && held.length === 0)
    context.fault(
      below(pointer, 'statistic'),
      'criterion-statistic',
      `a ${statistic.of} needs a limit to be held against`,
      'add an operator such as "at-least: 75 %"',
    )
  if (bands === undefined && statistic?.of !== 'variability')
    checkOperator(context, written, limits.length, pointer)
  if (typeof written.resolution === 'number' && !(0 < written.resolution)) {
    context.fault(
      below(pointer, 'resolution'),
      'criterion-resolution',
      `the rounding step ${written.resolution} is not above zero`,
      'write a step such as 0.1, in the unit of the limit, or none',
    )
  }
  const deemedBy =
    written['deemed-by'] === undefined
      ? undefined
      : compilePremises(context, written['deemed-by'], below(pointer, 'deemed-by'))
  return {
    ...head,
    form: 'comparison',
    property: key,
    ...present('condition', written.condition),
    ...present('age', written.age),
    limits,
    ...present('bands', bands),
    ...present('deviation', deviation),
    ...present('statistic', statistic),
    several: written.several ?? 'worst',
    ...present('resolution', resolutionOf(written)),
    ...present('approval', compileApproval(context, written, kind, pointer)),
    ...present('deemedBy', deemedBy),
    ...present('method', written.method),
    ...(written['method-required'] === 'yes' ? { methodRequired: true as const } : {}),
  }
}

/** The schema lets no other word through than "none". */
export function resolutionOf({ resolution }: WrittenClause): Resolution | undefined {
  return typeof resolution === 'string' ? 'none' : resolution
}

function compileDeviation(
  context: CompileContext,
  written: WrittenClause,
  pointer: string,
): Deviation | undefined {
  const from = written['deviation-from']
  const relative = written.relative === 'yes'
  if (from === undefined) {
    if (written.relative !== undefined)
      context.fault(
        below(pointer, 'relative'),
        'criterion-relative-without-deviation',
        '"relative" needs a reference to be relative to',
        'add "deviation-from:", or take "relative" out',
      )
    return undefined
  }
  if (from.preceding !== undefined && Number.isInteger(from.preceding))
    return { from: 'preceding', count: from.preceding, relative }
  if (from.declared === 'yes') return { from: 'declared', relative }
  if (from.control === 'yes') return { from: 'control', relative }
  const message =
    from.preceding === undefined
      ? 'the deviation names no reference'
      : `${from.preceding} preceding results is no whole number`
  context.fault(
    below(pointer, 'deviation-from'),
    'criterion-deviation',
    message,
    'write "preceding: 10", "declared: yes" or "control: yes"',
  )
  return undefined
}

/**
 * A deviation of a percentage is in points, a relative one in per cent, any other in the property's own unit.
 */
export function limitKind(key: PropertyKey, deviation: Comparison['deviation']): QuantityKind {
  const { kind } = property(key)
  if (deviation === undefined) return kind
  if (deviation.relative) return 'fraction'
  return kind === 'fraction' ? 'points' : kind === 'temperature' ? 'temperature-difference' : kind
}

function checkOperator(
  context: CompileContext,
  written: WrittenClause,
  compiled: number,
  pointer: string,
): void {
  if (
    0 < compiled ||
    WRITTEN_OPERATORS.some((operator) => operator !== 'report' && written[operator] !== undefined)
  )
    return
  context.fault(
    pointer,
    'criterion-no-operator',
    'the clause states no limit and asks for no report',
    'add an operator such as "at-most: 6.0 %", or "report: yes"',
  )
}

function compileBands(
  context: CompileContext,
  written: WrittenClause,
  key: PropertyKey,
  pointer: string,
): Band[] | undefined {
  return written.band?.map((band, index) => {
    const place = below(below(pointer, 'band'), index)
    const further = band.and === undefined ? [] : compilePremises(context, band.and, below(place, 'and'))
    const own =
      WRITTEN_OPERATORS.some((operator) => band[operator] !== undefined) || further.length === 0
        ? [{ property: key, limits: premiseLimits(context, band, key, place) }]
        : []
    return { title: band.title, where: [...own, ...further.filter((premise) => 'property' in premise)] }
  })
}

export function compileApproval(
  context: CompileContext,
  { approval, ...written }: WrittenClause,
  kind: QuantityKind,
  pointer: string,
): Approval | undefined {
  if (approval === undefined) return undefined
  const place = below(pointer, 'approval')
  if (approval.classes !== undefined)
    checkClasses(context, approval.classes, (index) => below(below(place, 'classes'), index))
  const [limit] = compileLimits(
    context,
    { ...present('at-least', approval['at-least']), ...present('at-most', approval['at-most']) },
    kind,
    place,
  )
  if (limit === undefined) {
    context.fault(
      place,
      'criterion-no-operator',
      'the approval states no outer limit',
      'add "at-most:" or "at-least:" with the outer limit',
    )
    return undefined
  }
  if (limit.operator === 'report' || written[limit.operator as 'at-least' | 'at-most'] === undefined) {
    context.fault(
      below(place, limit.operator),
      'criterion-limits-contradict',
      `the outer limit is "${limit.operator}", and the clause has no plain limit on that side`,
      'write the outer limit with the operator of the plain limit',
    )
  }
  return {
    limit,
    evidence: approval.evidence,
    ...present('classes', approval.classes),
    by: approval.by ?? 'approval',
  }
}

function compileFact(
  context: CompileContext,
  written: WrittenClause & { readonly fact: string },
  head: Head,
  pointer: string,
): Clause | undefined {
  if (written.is !== undefined) return { ...head, form: 'fact', fact: written.fact, is: written.is }
  context.fault(
    pointer,
    'criterion-premise',
    `the clause ${head.id} says not what the fact must be`,
    'add "is:" with the words allowed',
  )
  return undefined
}

/** Classes allowed may be those of another set, for a project that buys under several. */
export function compileAllowed(
  context: CompileContext,
  written: WrittenClause,
  allowed: readonly string[],
  head: Head,
  pointer: string,
): Clause {
  if (context.classes.length > 0)
    checkClasses(context, allowed, (index) =>
      below(below(pointer, written['allowed-classes'] === undefined ? 'classes' : 'allowed-classes'), index),
    )
  const acceptedAs = (written['accepted-as'] ?? []).map((entry, index) => {
    const place = below(below(pointer, 'accepted-as'), index)
    if (!allowed.includes(entry.as))
      context.fault(
        below(place, 'as'),
        'criterion-class-unknown',
        `class ${entry.as} is not among those allowed`,
        `write one of ${allowed.join(', ')}`,
      )
    return {
      class: entry.class,
      as: entry.as,
      where: compilePremises(context, entry.when, below(place, 'when')),
    }
  })
  return { ...head, form: 'class', allowed, acceptedAs }
}

export function compileSampling(
  context: CompileContext,
  written: NonNullable<WrittenClause['sampling']>,
  pointer: string,
): Pick<SamplingClause, 'form' | 'properties' | 'every' | 'newSource' | 'sample'> {
  const fresh = written['new-source']
  return {
    form: 'sampling',
    properties: written.properties.map(propertyKey),
    every: compileFrequency(context, written, pointer),
    ...(fresh === undefined
      ? {}
      : {
          newSource: {
            ...compileFrequency(context, fresh, below(pointer, 'new-source')),
            newFor: fresh.for.value / 24,
          },
        }),
    ...present('sample', written.sample),
  }
}

function compileFrequency(
  context: CompileContext,
  { every, 'or-every': orEvery }: WrittenFrequency,
  pointer: string,
): Frequency {
  const written = [orEvery?.written, every?.written].filter((text) => text !== undefined).join(' or ')
  if (written === '')
    context.fault(
      pointer,
      'criterion-sampling',
      'the frequency names neither a mass nor a time',
      'add "every:" with a mass, "or-every:" with a time, or both',
    )
  return { ...present('hours', orEvery?.value), ...present('tonnes', every?.value), written }
}
