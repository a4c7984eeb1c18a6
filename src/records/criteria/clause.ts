/** One clause of a criterion record, whatever its form, and the members of a group below it. */
import type { Clause, Group } from '../../core/criteria/criterion.ts'
import { below } from '../yaml/pointer.ts'
import { type ClausePosition, compileHead, type NamedPosition } from './clause-head.ts'
import { compileComparison } from './comparison.ts'
import type { CompileContext } from './context.ts'
import { compileAllowed, compileFact, compileSampling } from './record-clauses.ts'
import { WRITTEN_OPERATORS, type WrittenClause } from './written-criterion.ts'

const FORMS = ['any-of', 'all-of', 'property', 'fact', 'document', 'allowed-classes', 'sampling'] as const

/** @returns the compiled clause; undefined when it cannot be one, with the faults reported */
export function compileClause(
  context: CompileContext,
  written: WrittenClause,
  position: ClausePosition,
): Clause | undefined {
  const { pointer } = position
  const id = written.clause ?? position.givenId
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
  return compileForm(context, written, { ...position, id })
}

function compileForm(
  context: CompileContext,
  written: WrittenClause,
  position: NamedPosition,
): Clause | undefined {
  const members = written['any-of'] ?? written['all-of']
  if (members !== undefined) return compileGroup(context, written, members, position)
  if (written.property !== undefined)
    return compileComparison(context, { ...written, property: written.property }, position)
  return compileRecordClause(context, written, position)
}

/** A clause on the record in place of a value. */
function compileRecordClause(
  context: CompileContext,
  written: WrittenClause,
  position: NamedPosition,
): Clause | undefined {
  const { pointer, id } = position
  const head = compileHead(context, written, position)
  if (written.fact !== undefined)
    return compileFact(context, { ...written, fact: written.fact }, head, pointer)
  if (written.document !== undefined)
    return { ...head, form: 'document', document: written.document, voidOn: written['void-on'] ?? [] }
  if (written['allowed-classes'] !== undefined)
    return compileAllowed(
      context,
      {
        names: written['allowed-classes'],
        pointer: below(pointer, 'allowed-classes'),
        acceptedAs: { written: written['accepted-as'], pointer: below(pointer, 'accepted-as') },
      },
      head,
    )
  if (written.sampling !== undefined)
    return { ...head, ...compileSampling(context, written.sampling, below(pointer, 'sampling')) }
  context.fault(
    pointer,
    'criterion-property-missing',
    `the clause ${id} names no property`,
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
  'from',
  'duty',
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
  position: NamedPosition,
): Group {
  const { pointer, id } = position
  const combine = written['any-of'] === undefined ? 'all-of' : 'any-of'
  const head = compileHead(context, written, position)
  const compiled = members.map((member, index) =>
    compileClause(context, member, {
      pointer: below(below(pointer, combine), index),
      givenId: `${id}-${index + 1}`,
      above: head,
    }),
  )
  return { ...head, form: 'group', combine, members: compiled.filter((member) => member !== undefined) }
}
