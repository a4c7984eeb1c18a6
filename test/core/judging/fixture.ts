/**
 * Small builders for judging: a set from written clauses, results and evidence with the usual parts filled
 * in.
 */
import { readAge } from '../../../src/core/measure/age.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import type { Comparison, Criterion } from '../../../src/core/criteria/criterion.ts'
import { limitsForClass } from '../../../src/core/criteria/limits-for-class.ts'
import type { Evidence } from '../../../src/core/evidence/evidence.ts'
import { type PropertyKey, property } from '../../../src/core/measure/properties.ts'
import type { PlannedTest, PrecedingResult, Result } from '../../../src/core/result/result.ts'
import {
  isFault,
  KINDS,
  type Quantity,
  type QuantityKind,
  readQuantity,
} from '../../../src/core/measure/units.ts'
import { everyClauseOutcome } from '../../../src/core/criteria/verdict.ts'
import type { ComparisonCase } from '../../../src/core/judging/judging.ts'
import { judge } from '../../../src/core/judging/verdict.ts'
import type { Uncertainty } from '../../../src/core/result/uncertainty.ts'
import { type WordedVerdict, wordedVerdict } from '../../../src/words/worded-verdict.ts'
import { compileCriterion } from '../../../src/records/criteria/compile.ts'
import type { OtherRecords } from '../../../src/records/criteria/context.ts'
import type { WrittenClause, WrittenCriterion } from '../../../src/records/criteria/written-criterion.ts'

/** Sets that a trial set may extend are handed over by a test; none without it. */
export function knownOf(bases: Readonly<Record<string, Criterion>> = {}): OtherRecords {
  return {
    conditions: new Set(['c311', 'modified-50c']),
    criteria: new Set(['c618-12a', 'c618-19', ...Object.keys(bases)]),
    base: (id) => bases[id] ?? 'faulty',
  }
}

/** A compiled set; a fault in it fails the test. */
export function setOf(
  clauses: readonly WrittenClause[],
  more: Partial<WrittenCriterion> & {
    readonly id?: string
    readonly bases?: Readonly<Record<string, Criterion>>
  } = {},
): Criterion {
  const { id = 'trial', bases, ...rest } = more
  const record: WrittenCriterion = {
    title: 'Trial set',
    edition: '1',
    kinds: ['coal-fly-ash', 'raw-natural-pozzolan'],
    clauses,
    ...rest,
  }
  const set = compileCriterion(
    id,
    record,
    (pointer, fault) => {
      throw new Error(`${pointer}: ${fault.message}`)
    },
    knownOf(bases),
  )
  if (set === undefined) throw new Error('the set did not compile')
  return set
}

export function result(key: PropertyKey, value: number, more: Partial<Result> = {}): Result {
  const { kind, decimals } = property(key)
  return {
    key: [key, more.condition ?? '', more.age?.text ?? '', '', 'lab', more.sample ?? 'C'].join('|'),
    property: key,
    laboratory: 'lab',
    sample: 'C',
    sampleKind: 'composite',
    role: 'producer',
    value,
    unit: KINDS[kind].stored,
    decimals,
    n: 1,
    tested: readMoment('2026-03-10'),
    valid: true,
    reasons: [],
    working: () => [],
    ...more,
  }
}

/** A strength activity index at c311. */
export function index(age: '7 d' | '28 d', value: number, more: Partial<Result> = {}): Result {
  return result('strength-activity-index', value, { condition: 'c311', age: readAge(age), ...more })
}

export function plannedIndex(age: '7 d' | '28 d', more: Partial<PlannedTest> = {}): PlannedTest {
  return {
    property: 'strength-activity-index',
    condition: 'c311',
    age: readAge(age),
    unread: 'both',
    laboratory: 'lab',
    sample: 'C',
    sampleKind: 'composite',
    begun: readMoment('2026-03-11T09:20'),
    due: readMoment('2026-04-08'),
    ...more,
  }
}

export function evidenceOf(results: readonly Result[], more: Partial<Evidence> = {}): Evidence {
  return {
    class: null,
    kind: 'coal-fly-ash',
    asOf: readMoment('2026-04-01'),
    results,
    planned: [],
    preceding: () => [],
    ...more,
  }
}

/** A history that answers one property with these values, and honours the count asked for. */
export function history(key: PropertyKey, values: readonly number[]): Evidence['preceding'] {
  const all: PrecedingResult[] = values.map((value, place) => ({
    lot: `s/L${place + 1}`,
    sampled: readMoment(`2025-01-${String(place + 1).padStart(2, '0')}`),
    value,
  }))
  return (asked, _condition, _age, _method, count) => (asked === key ? all.slice(-count) : [])
}

/** A clause of a verdict, as judged or in words, at any depth. */
export function clauseOf<C extends { readonly id: string; readonly clauses?: readonly C[] }>(
  verdict: { readonly clauses: readonly C[] },
  id: string,
): C {
  const found = [...everyClauseOutcome(verdict.clauses)].find((clause) => clause.id === id)
  if (found === undefined) throw new Error(`no clause ${id} in the verdict`)
  return found
}

/** A verdict as it is printed, for what its sentences say; conditions go by their ids. */
export function judgeInWords(criterion: Criterion, evidence: Evidence, asClass?: string): WordedVerdict {
  return wordedVerdict(judge(criterion, evidence, asClass), criterion, (id) => id)
}

/** One comparison for a lot of class F without results of its own, for what judges a result handed to it. */
export function comparisonCase(
  written: Omit<WrittenClause, 'clause'>,
  evidence: Partial<Evidence> = {},
  set: Partial<WrittenCriterion> = {},
): ComparisonCase {
  const criterion = setOf([{ clause: 'c', ...written }], set)
  const clause = criterion.clauses[0] as Comparison
  const limits = limitsForClass(clause.limits, 'F')
  return { criterion, clause, limits, lotClass: 'F', evidence: evidenceOf([], evidence) }
}

/** A quantity as a record writes it. */
export function quantityOf(text: string, kind: QuantityKind): Quantity {
  const read = readQuantity(text, kind)
  if (isFault(read)) throw new Error(`${text}: ${read.fault}`)
  return read
}

/** A control period that answers with these values, whatever is asked. */
export function periodOf(values: readonly number[]): NonNullable<Evidence['period']> {
  return () =>
    values.map((value, place) => ({ lot: `s/P${place + 1}`, sampled: readMoment('2026-01-01'), value }))
}

/** An uncertainty that a laboratory states. */
export function statedUncertainty(u: number, df?: number): Uncertainty {
  const basis = { code: 'stated' as const, params: { basis: 'stated' } }
  return df === undefined ? { u, basis } : { u, df, basis }
}
