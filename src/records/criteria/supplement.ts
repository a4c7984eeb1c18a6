/**
 * What a supplement makes of the clauses of its base: each change is applied to one clause, and the clause
 * remembers it.
 */
import {
  type Clause,
  type Criterion,
  everyClause,
  type RemovedClause,
} from '../../core/criteria/criterion.ts'
import { defined } from '../../core/measure/defined.ts'
import { below } from '../yaml/pointer.ts'
import { type Addition, asItStood, changedClause } from './changed-clause.ts'
import { compileClause } from './clause.ts'
import { originOf } from './clause-head.ts'
import { clauseNamed, replaced, takenOver, without } from './clause-list.ts'
import type { CompileContext } from './context.ts'
import { compileAllowed } from './record-clauses.ts'
import type { WrittenChange, WrittenClause } from './written-criterion.ts'

interface Stack {
  readonly clauses: readonly Clause[]
  readonly removed: readonly RemovedClause[]
}

/** A clause as it came into the set, with the place in the record for faults; a base's clauses have none. */
export interface AddedClause {
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
): Stack & { readonly added: readonly AddedClause[] } {
  const added: AddedClause[] = []
  const stack = written.reduce<Stack>(
    (before, clause, index) => {
      const pointer = below('/clauses', index)
      if (clause.change === undefined || isAddition(clause.change)) {
        const compiled = compileAddition(context, clause, pointer)
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

function isAddition(change: WrittenChange): change is Addition {
  return change === 'add' || change === 'restrict' || change === 'add-document'
}

/** Stands in a set that extends none: a change has nothing to change. */
export function changeWithoutBase(context: CompileContext, written: WrittenClause, pointer: string): boolean {
  if (written.change === undefined) return false
  context.fault(
    below(pointer, 'change'),
    'criterion-change-without-base',
    `"change: ${written.change}" needs a specification to change, but this one extends none`,
    'add "extends: { set: ID }", or write the whole clause without "change"',
  )
  return true
}

function compileAddition(
  context: CompileContext,
  written: WrittenClause,
  pointer: string,
): Clause | undefined {
  if (written.change === 'restrict') return compileRestriction(context, written, pointer)
  if (written.change === 'add-document' && written.document === undefined) {
    context.fault(
      pointer,
      'criterion-change-form',
      'the change adds a document but names none',
      'add "document:" with its kind',
    )
    return undefined
  }
  return compileClause(context, written, { pointer })
}

/** Takes its place among the clauses like any other, so that a lot of another class is told why. */
function compileRestriction(
  context: CompileContext,
  written: WrittenClause,
  pointer: string,
): Clause | undefined {
  const { classes } = written
  if (classes === undefined) {
    context.fault(
      pointer,
      'criterion-change-form',
      'the change restricts the classes but names none',
      'add "classes:" with those that are allowed',
    )
    return undefined
  }
  const head = {
    id: written.clause ?? 'allowed-classes',
    ...defined({ title: written.title }),
    optional: false,
    information: false,
    ...originOf(written),
    layer: context.id,
  }
  const acceptedAs = { written: written['accepted-as'], pointer: below(pointer, 'accepted-as') }
  return compileAllowed(context, { names: classes, pointer: below(pointer, 'classes'), acceptedAs }, head)
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
      `the specification has no clause "${after}" to follow`,
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
  const target = written.clause === undefined ? undefined : clauseNamed(stack.clauses, written.clause)
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
    clauses: replaced(
      stack.clauses,
      target.id,
      changedClause(context, target, { written, change: change.change, pointer }),
    ),
  }
}
