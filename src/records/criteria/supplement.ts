/**
 * What a supplement makes of the clauses of its base: each change is applied to one clause, and the clause
 * remembers it.
 */
import {
  type Clause,
  type ClauseChange,
  type Comparison,
  type Criterion,
  EVERY_CLASS,
  everyClause,
  type Group,
  includesClass,
  partsOfClass,
  type RemovedClause,
} from '../../core/criteria/criterion.ts'
import {
  basisOf,
  compileAllowed,
  compileApproval,
  compileClause,
  compileSampling,
  limitKind,
  type Place,
  resolutionOf,
} from './clause.ts'
import { below, type CompileContext } from './context.ts'
import { mergeLimits } from './merge.ts'
import { checkTogether, compileLimits } from './limits.ts'
import { present } from './parts.ts'
import type { WrittenChange, WrittenClause } from './written-criterion.ts'

interface Stack {
  readonly clauses: readonly Clause[]
  readonly removed: readonly RemovedClause[]
}

/** A clause as it came into the set, with the place in the record for faults; a base's clauses have none. */
export interface Placed {
  readonly clause: Clause
  readonly pointer: string
}

/**
 * @param base compiled set below
 * @param written clauses and changes of the supplement, in order; later ones see what earlier ones made
 * @returns all clauses in reading order, those that the supplement added with their places, and those taken
 * out
 */
export function supplement(
  context: CompileContext,
  base: Criterion,
  written: readonly WrittenClause[],
): Stack & { readonly added: readonly Placed[] } {
  const added: Placed[] = []
  const stack = written.reduce<Stack>(
    (before, clause, index) => {
      const pointer = below('/clauses', index)
      if (clause.change === undefined || isAddition(clause.change)) {
        const compiled = compileAddition(context, clause, { pointer })
        if (compiled === undefined) return before
        added.push({ clause: compiled, pointer })
        return { ...before, clauses: insert(context, before.clauses, compiled, clause.after, pointer) }
      }
      return changed(context, before, { written: clause, change: clause.change, pointer })
    },
    {
      clauses: context.classes.length === 0 ? base.clauses : takenOver(base.clauses, context.classes),
      removed: base.removed,
    },
  )
  return { ...stack, added }
}

type Addition = 'add' | 'restrict' | 'add-document'

function isAddition(change: WrittenChange): change is Addition {
  return change === 'add' || change === 'restrict' || change === 'add-document'
}

/** Stands in a set that extends none: a change has nothing to change. */
export function changeWithoutBase(context: CompileContext, written: WrittenClause, pointer: string): boolean {
  if (written.change === undefined) return false
  context.fault(
    below(pointer, 'change'),
    'criterion-change-without-base',
    `"change: ${written.change}" needs a set to change, and this one extends none`,
    'add "extends: { set: ID }", or write the whole clause without "change"',
  )
  return true
}

function compileAddition(context: CompileContext, written: WrittenClause, place: Place): Clause | undefined {
  if (written.change === 'restrict') return compileRestriction(context, written, place.pointer)
  if (written.change === 'add-document' && written.document === undefined) {
    context.fault(
      place.pointer,
      'criterion-change-form',
      'the change adds a document and names none',
      'add "document:" with its kind',
    )
    return undefined
  }
  return compileClause(context, written, place)
}

/** Takes its place among the clauses like any other, so that a lot of another class is told why. */
function compileRestriction(
  context: CompileContext,
  written: WrittenClause,
  pointer: string,
): Clause | undefined {
  const { classes, ...rest } = written
  if (classes === undefined) {
    context.fault(
      pointer,
      'criterion-change-form',
      'the change restricts the classes and names none',
      'add "classes:" with those that are allowed',
    )
    return undefined
  }
  const head = {
    id: written.clause ?? 'allowed-classes',
    ...present('title', written.title),
    optional: false,
    information: false,
    ...originOf(written),
    layer: context.id,
  }
  return compileAllowed(context, rest, classes, head, pointer)
}

function insert(
  context: CompileContext,
  clauses: readonly Clause[],
  clause: Clause,
  after: string | undefined,
  pointer: string,
): readonly Clause[] {
  if (after === undefined) return [...clauses, clause]
  const place = clauses.findIndex((candidate) => candidate.id === after)
  if (place < 0)
    context.fault(
      below(pointer, 'after'),
      'criterion-change-clause',
      `the set has no clause "${after}" to stand behind`,
      `name one of ${clauses.map(({ id }) => id).join(', ')}`,
    )
  return clauses.toSpliced(place + 1, 0, clause)
}

interface Change {
  readonly written: WrittenClause
  readonly change: Exclude<WrittenChange, Addition>
  readonly pointer: string
}

function changed(context: CompileContext, stack: Stack, change: Change): Stack {
  const { written, pointer } = change
  const target = written.clause === undefined ? undefined : find(stack.clauses, written.clause)
  if (target === undefined) {
    const ids = [...everyClause(stack.clauses)].map(({ id }) => id).join(', ')
    context.fault(
      below(pointer, written.clause === undefined ? 'change' : 'clause'),
      'criterion-change-clause',
      written.clause === undefined
        ? 'the change names no clause'
        : `the base has no clause "${written.clause}"`,
      `name one of ${ids}`,
    )
    return stack
  }
  if (change.change === 'remove') {
    return {
      clauses: without(stack.clauses, target.id),
      removed: [
        ...stack.removed,
        { id: target.id, layer: target.layer, by: context.id, former: asItStood(target) },
      ],
    }
  }
  return {
    ...stack,
    clauses: replace(
      stack.clauses,
      target.id,
      changedClause(context, target, { written, change: change.change, pointer }),
    ),
  }
}

function changedClause(
  context: CompileContext,
  target: Clause,
  { written, change, pointer }: Change & { readonly change: Exclude<WrittenChange, Addition | 'remove'> },
): Clause {
  const record: ClauseChange = { layer: context.id, change, former: asItStood(target) }
  const changes = [...(target.changes ?? []), record]
  switch (change) {
    case 'tighten':
    case 'relax':
      return target.form === 'comparison' && target.bands === undefined
        ? { ...changedLimits(context, target, written, change, pointer), changes }
        : misfit(context, target, pointer, `limit to ${change}`)
    case 'promote':
      return target.optional || target.information
        ? { ...target, optional: false, information: false, changes }
        : misfit(context, target, pointer, 'standing to promote from: it is mandatory already')
    case 'replace-method':
      return target.form === 'comparison' && written.method !== undefined
        ? {
            ...target,
            method: written.method,
            ...(written['method-required'] === 'no' ? {} : { methodRequired: true as const }),
            changes,
          }
        : misfit(
            context,
            target,
            pointer,
            target.form === 'comparison' ? 'method in the change: add "method:"' : 'method to replace',
          )
    case 'set-frequency':
      return target.form === 'sampling' && written.sampling !== undefined
        ? {
            ...withoutOrigin(target),
            ...compileSampling(context, written.sampling, below(pointer, 'sampling')),
            ...originOf(written),
            layer: context.id,
            changes,
          }
        : misfit(
            context,
            target,
            pointer,
            target.form === 'sampling' ? 'frequency in the change: add "sampling:"' : 'frequency to set',
          )
  }
}

/** What a change remembers of a clause: its demand, without what made it. */
function asItStood({ changes: _, ...clause }: Clause): Clause {
  return clause.form === 'group' ? { ...clause, members: clause.members.map(asItStood) } : clause
}

function misfit(context: CompileContext, target: Clause, pointer: string, lacks: string): Clause {
  context.fault(
    below(pointer, 'change'),
    'criterion-change-form',
    `the clause ${target.id} has no ${lacks}`,
    'choose a change that fits the clause, or remove it and add another',
  )
  return target
}

/**
 * Where the limits come from changes with them: the basis of the layer below says nothing on the new ones.
 */
function changedLimits(
  context: CompileContext,
  target: Comparison,
  written: WrittenClause,
  change: 'tighten' | 'relax',
  pointer: string,
): Comparison {
  const kind = limitKind(target.property, target.deviation)
  const limits = compileLimits(context, written, kind, pointer)
  if (limits.length === 0 && written.approval === undefined) {
    context.fault(
      pointer,
      'criterion-no-operator',
      `the change says ${change} and states no limit`,
      'add an operator such as "at-most: 5.0 %"',
    )
    return target
  }
  const { approval: _approval, ...rest } = withoutOrigin(target)
  const merged = mergeLimits(context, target.limits, limits, { change, pointer })
  checkTogether(context, merged, pointer)
  // An outer limit above a tightened one would hollow it out, so it stays only where the change says so.
  const approval =
    written.approval === undefined
      ? change === 'relax'
        ? target.approval
        : undefined
      : compileApproval(context, plainSides(merged, written), kind, pointer)
  return {
    ...rest,
    limits: merged,
    ...present('approval', approval),
    ...present('resolution', resolutionOf(written) ?? target.resolution),
    ...present('title', written.title ?? target.title),
    ...originOf(written),
    layer: context.id,
  }
}

/** The origin of a limit goes when the limit does. */
function withoutOrigin<C extends Clause>({
  basis: _basis,
  setBy: _setBy,
  ...clause
}: C): Omit<C, 'basis' | 'setBy'> {
  return clause
}

function originOf(written: WrittenClause): Pick<Clause, 'basis' | 'setBy'> {
  return { ...present('basis', basisOf(written)), ...present('setBy', written['set-by']) }
}

/** The approval is checked against the sides that the merged limits have. */
function plainSides(limits: Comparison['limits'], written: WrittenClause): WrittenClause {
  const has = (operator: string) => (limits.some((limit) => limit.operator === operator) ? 'yes' : undefined)
  return {
    ...written,
    ...present('at-least', written['at-least'] ?? has('at-least')),
    ...present('at-most', written['at-most'] ?? has('at-most')),
  }
}

function find(clauses: readonly Clause[], id: string): Clause | undefined {
  return [...everyClause(clauses)].find((clause) => clause.id === id)
}

/** A group with a changed member no longer rests on its own basis as a whole: each member has its own. */
function replace(clauses: readonly Clause[], id: string, by: Clause): readonly Clause[] {
  return clauses.map((clause) => {
    if (clause.id === id) return by
    if (clause.form !== 'group' || find(clause.members, id) === undefined) return clause
    return {
      ...(by.changes?.at(-1)?.change === 'promote' ? clause : withoutOrigin(clause)),
      members: replace(clause.members, id, by),
    } satisfies Group
  })
}

/** Clauses of a base as far as they speak of the classes taken over. */
function takenOver(clauses: readonly Clause[], classes: readonly string[]): readonly Clause[] {
  return clauses.flatMap((clause): Clause[] => {
    if (clause.classes !== undefined && !classes.some((name) => includesClass(clause.classes ?? [], name)))
      return []
    if (clause.form === 'group') return [{ ...clause, members: takenOver(clause.members, classes) }]
    if (clause.form !== 'comparison') return [clause]
    const limits = clause.limits.map((limit) => ({
      ...limit,
      byClass: Object.fromEntries(
        Object.entries(limit.byClass).filter(
          ([name]) => name === EVERY_CLASS || classes.some((one) => partsOfClass(one).includes(name)),
        ),
      ),
    }))
    const kept = limits.filter(
      (limit) => limit.operator === 'report' || Object.keys(limit.byClass).length > 0,
    )
    return kept.length === 0 && clause.limits.length > 0 ? [] : [{ ...clause, limits: kept }]
  })
}

function without(clauses: readonly Clause[], id: string): readonly Clause[] {
  return clauses
    .filter((clause) => clause.id !== id)
    .map((clause) => (clause.form === 'group' ? { ...clause, members: without(clause.members, id) } : clause))
}
