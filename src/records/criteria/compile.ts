/**
 * A criterion record becomes the set that the core judges by; every fault is reported where it stands in the
 * record.
 */
import type { MaterialKind } from '../../core/measure/material-kind.ts'
import {
  type Clause,
  type Criterion,
  everyClause,
  type Layer,
  setName,
} from '../../core/criteria/criterion.ts'
import { property } from '../../core/measure/properties.ts'
import { compileClause, compileDecisionRule } from './clause.ts'
import {
  below,
  checkClasses,
  type CompileContext,
  compileContext,
  type CompileFault,
  type KnownRecords,
} from './context.ts'
import { compileLimits } from './limits.ts'
import { present } from './parts.ts'
import { compilePremises } from './premise.ts'
import type { WrittenCriterion } from './written-criterion.ts'
import { changeWithoutBase, type Placed, supplement } from './supplement.ts'

export { CRITERION_CODES } from './codes.ts'

/**
 * Compiles a validated criterion record.
 * @param id id of the record, which becomes the layer of every limit
 * @param record as written, after validation against schemas/criterion.json
 * @param report receives each fault with the JSON pointer of its place
 * @param known ids of the conditions and criteria that exist, and the compiled sets that this one may rest on
 * @returns the set; undefined when a fault was reported or its base has one, since a set that cannot be read
 * in one way only judges nothing
 */
export function compileCriterion(
  id: string,
  record: WrittenCriterion,
  report: (pointer: string, fault: CompileFault) => void,
  known: KnownRecords,
): Criterion | undefined {
  const base = record.extends === undefined ? null : baseOf(record.extends, known, report)
  if (base === undefined) return undefined
  const context = compileContext(id, classesOf(record, base), known, report)
  if (base !== null) checkTakenOver(context, record, base)
  const whole = base === null ? wholeSet(context, record) : supplement(context, base, record.clauses)
  checkIds(context, whole.clauses, whole.added)
  checkNames(context, record)
  const set = compileSet(context, record, { ...whole, base })
  return context.faults() === 0 ? set : undefined
}

type Extends = NonNullable<WrittenCriterion['extends']>

function baseOf(
  named: Extends,
  known: KnownRecords,
  report: (pointer: string, fault: CompileFault) => void,
): Criterion | undefined {
  const fault = (code: 'criterion-base-unknown' | 'criterion-base-cycle', message: string, mend: string) =>
    report('/extends/set', { code, message, mend })
  if (!known.criteria.has(named.set)) {
    fault(
      'criterion-base-unknown',
      `there is no criterion "${named.set}" to extend`,
      `name one of: ${[...known.criteria].sort().join(', ')}`,
    )
    return undefined
  }
  const base = named.edition === 'current' ? currentEdition(named.set, known) : known.base(named.set)
  if (base === 'cycle')
    fault(
      'criterion-base-cycle',
      `the set extends "${named.set}", which extends it in turn`,
      'let one of them stand on its own',
    )
  return typeof base === 'object' ? base : undefined
}

/** The last of the editions that supersede a set. */
function currentEdition(id: string, known: KnownRecords): Criterion | 'faulty' | 'cycle' {
  const seen = new Set<string>()
  for (let next = id; ; ) {
    if (seen.has(next)) return 'cycle'
    seen.add(next)
    const set = known.base(next)
    if (typeof set !== 'object' || set.supersededBy === undefined) return set
    next = set.supersededBy
  }
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
  if (record.extends?.classes !== undefined)
    checkClasses(inBase, record.extends.classes, (index) => below('/extends/classes', index))
}

function wholeSet(
  context: CompileContext,
  record: WrittenCriterion,
): { clauses: Clause[]; removed: []; added: Placed[] } {
  const added = record.clauses.flatMap((written, index): Placed[] => {
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
    ...present('designation', record.designation),
    edition: record.edition,
    ...present('authority', record.authority),
    ...present('confirmed', record.confirmed),
    sources: record.sources ?? {},
  }
  const release =
    record.release === undefined ? (base?.release ?? []) : compileRelease(context, record, clauses)
  return {
    id: context.id,
    title: record.title,
    ...present('designation', record.designation),
    edition: record.edition,
    ...present('authority', record.authority),
    ...present('supersededBy', record['superseded-by']),
    kinds: record.kinds as readonly MaterialKind[],
    classes: context.classes,
    classTitles: record['class-titles'] ?? base?.classTitles ?? {},
    ...present('axes', record.axes ?? base?.axes),
    bestFirst:
      record['best-first'] === undefined ? (base?.bestFirst ?? false) : record['best-first'] === 'yes',
    ...present('classFrom', compileClassFrom(context, record) ?? base?.classFrom),
    clauses,
    release,
    decisionRule:
      record['decision-rule'] === undefined
        ? (base?.decisionRule ?? { rule: 'as-specified' })
        : compileDecisionRule(context, record['decision-rule'], '/decision-rule'),
    layers: [...(base?.layers ?? []), own],
    removed,
    lacks: [...(base?.lacks ?? []), ...(record.lacks ?? [])],
    ...present('retests', record.retests ?? base?.retests),
    ...present('note', record.note),
  }
}

function compileClassFrom(context: CompileContext, record: WrittenCriterion): Criterion['classFrom'] {
  return record['class-from']?.map((entry, index) => {
    const place = below('/class-from', index)
    checkClasses(context, [entry.class], () => below(place, 'class'))
    return { class: entry.class, where: compilePremises(context, entry.when, below(place, 'when')) }
  })
}

/**
 * Ids are told apart without regard to case, as all ids of the records are; of two, the one that this record
 * added is told.
 */
function checkIds(context: CompileContext, clauses: readonly Clause[], added: readonly Placed[]): void {
  const times = new Map<string, number>()
  for (const { id } of everyClause(clauses))
    times.set(id.toLowerCase(), (times.get(id.toLowerCase()) ?? 0) + 1)
  const told = new Set<string>()
  for (const { clause, pointer } of added.toReversed()) {
    for (const { id } of everyClause([clause])) {
      const key = id.toLowerCase()
      if ((times.get(key) ?? 0) < 2 || told.has(key)) continue
      told.add(key)
      context.fault(
        pointer,
        'criterion-clause-duplicate',
        `the clause id "${id}" stands twice in the set`,
        'give one of the two another id',
      )
    }
  }
}

function checkNames(context: CompileContext, record: WrittenCriterion): void {
  const later = record['superseded-by']
  if (later !== undefined && !context.known.criteria.has(later)) {
    context.fault(
      '/superseded-by',
      'criterion-superseded-by-unknown',
      `there is no criterion "${later}"`,
      `name one of: ${[...context.known.criteria].sort().join(', ')}`,
    )
  }
  for (const name of Object.keys(record['class-titles'] ?? {})) {
    if (!context.classes.includes(name) && !context.categories.includes(name))
      context.fault(
        below('/class-titles', name),
        'criterion-class-unknown',
        `the set has no class "${name}"`,
        'add it to "classes", or take its title out',
      )
  }
}

function compileRelease(
  context: CompileContext,
  record: WrittenCriterion,
  clauses: readonly Clause[],
): Criterion['release'] {
  return (record.release ?? []).flatMap((entry, index) => {
    const pointer = below('/release', index)
    const clause = [...everyClause(clauses)].find((candidate) => candidate.id === entry.clause)
    if (clause === undefined) {
      context.fault(
        below(pointer, 'clause'),
        'criterion-release-clause',
        `the set has no clause "${entry.clause}"`,
        'name the id of a clause of this set',
      )
      return []
    }
    const comparison = [...everyClause([clause])].find((candidate) => candidate.form === 'comparison')
    const limits =
      entry.with === undefined || comparison === undefined
        ? []
        : compileLimits(context, entry.with, property(comparison.property).kind, below(pointer, 'with'))
    return [{ clause: entry.clause, ...present('age', entry.with?.age), limits }]
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
  known: Omit<KnownRecords, 'base'>,
): Map<string, Criterion> {
  const compiled = new Map<string, Criterion | 'faulty' | 'cycle'>()
  const compile = (id: string): Criterion | 'faulty' | 'cycle' => {
    const before = compiled.get(id)
    if (before !== undefined) return before
    const source = sources.get(id)
    if (source === undefined) return 'faulty'
    compiled.set(id, 'cycle')
    const criterion =
      compileCriterion(id, source.record, source.report, { ...known, base: compile }) ?? 'faulty'
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
