/**
 * A criterion record becomes the set that the core judges by; every fault is reported where it stands in the
 * record.
 */
import { type Clause, type Criterion, type Layer, setName } from '../../core/criteria/criterion.ts'
import { defined } from '../../core/measure/defined.ts'
import { below } from '../yaml/pointer.ts'
import { compileClause } from './clause.ts'
import { compileDecisionRule } from './clause-head.ts'
import {
  checkClass,
  checkClasses,
  type CompileContext,
  compileContext,
  type CompileFault,
  type OtherRecords,
} from './context.ts'
import { baseOf } from './base.ts'
import { compilePremises } from './premise.ts'
import type { WrittenCriterion } from './written-criterion.ts'
import { compileRelease } from './release.ts'
import { checkIds, checkNames } from './set-names.ts'
import { changeWithoutBase, type AddedClause, supplement } from './supplement.ts'

/**
 * Compiles a validated criterion record.
 * @param id id of the record, which becomes the layer of every limit
 * @param record as written, after validation against schemas/criterion.json
 * @param report receives each fault with the JSON pointer of its place
 * @param others ids of the conditions and criteria that exist, and the compiled sets that this one may rest on
 * @returns the set; undefined when a fault was reported or its base has one, since a set that cannot be read
 * in one way only judges nothing
 */
export function compileCriterion(
  id: string,
  record: WrittenCriterion,
  report: (pointer: string, fault: CompileFault) => void,
  others: OtherRecords,
): Criterion | undefined {
  const base = record.extends === undefined ? null : baseOf(record.extends, others, report)
  if (base === undefined) return undefined
  const context = compileContext(id, classesOf(record, base), others, report)
  if (base !== null) checkTakenOver(context, record, base)
  const whole = base === null ? wholeSet(context, record) : supplement(context, base, record.clauses ?? [])
  checkIds(context, whole.clauses, whole.added)
  checkNames(context, record)
  const set = compileSet(context, record, { ...whole, base })
  return context.faults() === 0 ? set : undefined
}

function classesOf(record: WrittenCriterion, base: Criterion | null): readonly string[] {
  if (record.axes !== undefined)
    return record.axes.reduce<string[]>(
      (names, axis) =>
        names.length === 0
          ? [...axis]
          : names.flatMap((name) => axis.map((category) => `${name}/${category}`)),
      [],
    )
  return record.classes ?? record.extends?.classes ?? base?.classes ?? []
}

function checkTakenOver(context: CompileContext, record: WrittenCriterion, base: Criterion): void {
  const inBase = { ...context, classes: base.classes, categories: [] }
  if (record.extends?.classes !== undefined) checkClasses(inBase, record.extends.classes, '/extends/classes')
}

function wholeSet(
  context: CompileContext,
  record: WrittenCriterion,
): { clauses: Clause[]; removed: []; added: AddedClause[] } {
  const added = (record.clauses ?? []).flatMap((written, index): AddedClause[] => {
    const pointer = below('/clauses', index)
    if (changeWithoutBase(context, written, pointer)) return []
    const clause = compileClause(context, written, { pointer })
    return clause === undefined ? [] : [{ clause, pointer }]
  })
  return { clauses: added.map(({ clause }) => clause), removed: [], added }
}

interface Whole {
  readonly clauses: readonly Clause[]
  readonly removed: Criterion['removed']
  readonly base: Criterion | null
}

function compileSet(
  context: CompileContext,
  record: WrittenCriterion,
  { clauses, removed, base }: Whole,
): Criterion {
  const own: Layer = {
    id: context.id,
    title: record.title,
    ...defined({ designation: record.designation }),
    edition: record.edition,
    ...defined({ authority: record.authority, confirmed: record.confirmed }),
    sources: record.sources ?? {},
  }
  const release =
    record.release === undefined ? (base?.release ?? []) : compileRelease(context, record, clauses)
  return {
    id: context.id,
    title: record.title,
    ...defined({ designation: record.designation }),
    edition: record.edition,
    ...defined({ authority: record.authority, supersededBy: record['superseded-by'] }),
    kinds: record.kinds,
    classes: context.classes,
    classTitles: record['class-titles'] ?? base?.classTitles ?? {},
    ...defined({ axes: record.axes ?? base?.axes }),
    bestFirst:
      record['best-first'] === undefined ? (base?.bestFirst ?? false) : record['best-first'] === 'yes',
    ...defined({ classFrom: compileClassFrom(context, record) ?? base?.classFrom }),
    clauses,
    release,
    decisionRule:
      record['decision-rule'] === undefined
        ? (base?.decisionRule ?? { rule: 'as-specified' })
        : compileDecisionRule(context, record['decision-rule'], '/decision-rule'),
    layers: [...(base?.layers ?? []), own],
    removed,
    lacks: [...(base?.lacks ?? []), ...(record.lacks ?? [])],
    ...defined({ retests: record.retests ?? base?.retests, note: record.note }),
  }
}

function compileClassFrom(context: CompileContext, record: WrittenCriterion): Criterion['classFrom'] {
  return record['class-from']?.map((entry, index) => {
    const at = below('/class-from', index)
    checkClass(context, entry.class, below(at, 'class'))
    return { class: entry.class, where: compilePremises(context, entry.when, below(at, 'when')) }
  })
}

/** A record with where its faults go. */
export interface CriterionSource {
  readonly record: WrittenCriterion
  readonly report: (pointer: string, fault: CompileFault) => void
}

/**
 * Compiles all sets, each base before what extends it and each once.
 * @returns the sets without a fault, in the order of the records
 */
export function compileCriteria(
  sources: ReadonlyMap<string, CriterionSource>,
  others: Omit<OtherRecords, 'base'>,
): Map<string, Criterion> {
  const compiled = new Map<string, Criterion | 'faulty' | 'cycle'>()
  const compile = (id: string): Criterion | 'faulty' | 'cycle' => {
    const before = compiled.get(id)
    if (before !== undefined) return before
    const source = sources.get(id)
    if (source === undefined) return 'faulty'
    compiled.set(id, 'cycle')
    const criterion =
      compileCriterion(id, source.record, source.report, { ...others, base: compile }) ?? 'faulty'
    compiled.set(id, criterion)
    return criterion
  }
  return new Map(
    [...sources.keys()].flatMap((id) => {
      const criterion = compile(id)
      return typeof criterion === 'object' ? [[id, withLaterName(criterion, compile)] as const] : []
    }),
  )
}

function withLaterName(
  criterion: Criterion,
  compile: (id: string) => Criterion | 'faulty' | 'cycle',
): Criterion {
  const later = criterion.supersededBy === undefined ? undefined : compile(criterion.supersededBy)
  return typeof later === 'object' ? { ...criterion, laterName: setName(later) } : criterion
}
