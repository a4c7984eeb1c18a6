/** A criterion record becomes the set that the core judges by; every fault is reported where it stands in the record. */
import { type Clause, type Criterion, everyClause, type MaterialKind } from '../core/criterion.ts'
import { property } from '../core/properties.ts'
import { compileClause, compileDecisionRule, present } from './criterion-clause.ts'
import { below, type CompileContext, compileContext, type CompileFault, type KnownRecords } from './criterion-context.ts'
import { compileLimits } from './criterion-limits.ts'
import type { WrittenCriterion } from './criterion-record.ts'

export { CRITERION_CODES } from './criterion-codes.ts'

/**
 * Compiles a validated criterion record.
 * @param id id of the record, which becomes the layer of every limit
 * @param record as written, after validation against schemas/criterion.json
 * @param report receives each fault with the JSON pointer of its place
 * @param known ids of the conditions and criteria that exist
 * @returns the set; undefined when a fault was reported, since a set that cannot be read in one way only judges nothing
 */
export function compileCriterion(id: string, record: WrittenCriterion, report: (pointer: string, fault: CompileFault) => void, known: KnownRecords): Criterion | undefined {
  const context = compileContext(id, record, known, report)
  if (record.extends !== undefined) {
    context.fault('/extends', 'criterion-extends-not-supported', `the set extends "${record.extends.set}", which is not supported yet`, 'write the whole set with its clauses in one record')
    return undefined
  }
  const clauses = record.clauses.map((clause, index) => ({ clause: compileClause(context, clause, { pointer: below('/clauses', index) }), pointer: below('/clauses', index) }))
  checkIds(context, clauses)
  checkNames(context, record)
  const compiled = clauses.map(({ clause }) => clause).filter((clause) => clause !== undefined)
  const set = compileSet(context, record, compiled)
  return context.faults() === 0 ? set : undefined
}

function compileSet(context: CompileContext, record: WrittenCriterion, clauses: readonly Clause[]): Criterion {
  return {
    id: context.id, title: record.title, ...present('designation', record.designation), edition: record.edition, ...present('authority', record.authority), ...present('supersededBy', record['superseded-by']),
    kinds: record.kinds as readonly MaterialKind[], classes: context.classes, classTitles: record['class-titles'] ?? {}, clauses, release: compileRelease(context, record, clauses),
    decisionRule: record['decision-rule'] === undefined ? { rule: 'as-specified' } : compileDecisionRule(context, record['decision-rule'], '/decision-rule'),
    ...present('confirmed', record.confirmed), lacks: record.lacks ?? [], sources: record.sources ?? {}, ...present('note', record.note),
  }
}

function checkIds(context: CompileContext, clauses: readonly { clause: Clause | undefined; pointer: string }[]): void {
  const seen = new Set<string>()
  for (const { clause, pointer } of clauses) {
    for (const { id } of clause === undefined ? [] : everyClause([clause])) {
      // Ids are told apart without regard to case, as all ids of the records are.
      const key = id.toLowerCase()
      if (seen.has(key)) context.fault(pointer, 'criterion-clause-duplicate', `the clause id "${id}" stands twice in the set`, 'give one of the two another id')
      seen.add(key)
    }
  }
}

function checkNames(context: CompileContext, record: WrittenCriterion): void {
  const later = record['superseded-by']
  if (later !== undefined && !context.known.criteria.has(later)) {
    context.fault('/superseded-by', 'criterion-superseded-by-unknown', `there is no criterion "${later}"`, `name one of: ${[...context.known.criteria].sort().join(', ')}`)
  }
  for (const name of Object.keys(record['class-titles'] ?? {})) {
    if (!context.classes.includes(name)) context.fault(below('/class-titles', name), 'criterion-class-unknown', `the set has no class "${name}"`, 'add it to "classes", or take its title out')
  }
}

function compileRelease(context: CompileContext, record: WrittenCriterion, clauses: readonly Clause[]): Criterion['release'] {
  return (record.release ?? []).flatMap((entry, index) => {
    const pointer = below('/release', index)
    const clause = [...everyClause(clauses)].find((candidate) => candidate.id === entry.clause)
    if (clause === undefined) {
      context.fault(below(pointer, 'clause'), 'criterion-release-clause', `the set has no clause "${entry.clause}"`, 'name the id of a clause of this set')
      return []
    }
    const comparison = [...everyClause([clause])].find((candidate) => candidate.form === 'comparison')
    const limits = entry.with === undefined || comparison === undefined ? [] : compileLimits(context, entry.with, property(comparison.property).kind, below(pointer, 'with'))
    return [{ clause: entry.clause, ...present('age', entry.with?.age), limits }]
  })
}
