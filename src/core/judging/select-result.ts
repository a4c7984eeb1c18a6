/** Which results a clause is about, and what stands in their place when there is none to judge. */
import { earliestOf } from '../measure/moment.ts'
import { isSameAge } from '../measure/age.ts'
import { dutyOf } from '../measure/duty.ts'
import type { Comparison } from '../criteria/criterion.ts'
import type { Selection, SelectionReason } from '../criteria/selection.ts'
import type { Evidence } from '../evidence/evidence.ts'
import { derivedOnDemand } from '../result/derived-values.ts'
import { byTest } from '../result/by-test.ts'
import type { PlannedTest, Result } from '../result/result.ts'

type Asked = Pick<Comparison, 'property' | 'condition' | 'age'> &
  Partial<Pick<Comparison, 'method' | 'methodRequired' | 'from' | 'duty'>>

/**
 * The results a clause is judged on: same property, condition and age, valid ones, in order of test; those on
 * samples of the clause's duty, or, where it names none, on composites before regular samples.
 * Notes: 1. while one valid result stands, those that are not valid are passed over; 2. without a valid one,
 * a test still awaited makes the clause pending, even where an earlier one broke its method's conditions.
 */
export function selectResults(clause: Asked, evidence: Evidence): Selection {
  const stated = evidence.results.filter((result) => matches(result, clause))
  const any = [...stated, ...derivedBeside(stated, derivedOnDemand(clause.property, evidence.results))]
  const byMethod = any.filter((result) => isByMethod(result, clause))
  const every = byMethod.filter((result) => isFromAsked(result, clause)).sort(byTest)
  const all = every.filter((result) => isOfDuty(result, clause))
  const valid = all.filter((result) => result.valid)
  if (0 < valid.length) return selected(valid, every, clause)
  const planned = evidence.planned.filter((test) => isOf(test, clause) && isOfDuty(test, clause))
  const unmade = (evidence.unmade ?? []).filter((test) => isOf(test, clause) && isOfDuty(test, clause))
  return (
    awaited(planned) ??
    notValid([...all, ...unmade]) ?? {
      found: 'none',
      outcome: 'not-reported',
      reason:
        overdue(planned) ??
        otherDuties(every, clause) ??
        withoutReadings(byMethod) ??
        otherMethods(any, clause) ??
        NO_RESULT,
    }
  )
}

/** What follows from other results, unless the same analysis states the property itself. */
function derivedBeside(stated: readonly Result[], derived: readonly Result[]): Result[] {
  return derived.filter(
    ({ sample, laboratory, role, tested }) =>
      !stated.some(
        (own) =>
          own.valid &&
          own.sample === sample &&
          own.laboratory === laboratory &&
          own.role === role &&
          own.tested.text === tested.text,
      ),
  )
}

/**
 * Every index belongs to a condition and is never held against another's limit. A water requirement reported
 * without its mortar is the one exception: the method that names the property fixes the mortar.
 */
function matches(result: Result, clause: Asked): boolean {
  if (result.property !== clause.property || !isSameAge(result.age, clause.age)) return false
  return (
    result.condition === clause.condition ||
    (result.condition === undefined && clause.property === 'water-requirement')
  )
}

function isOf(test: Pick<PlannedTest, 'property' | 'condition' | 'age'>, clause: Asked): boolean {
  return (
    test.property === clause.property &&
    test.condition === clause.condition &&
    isSameAge(test.age, clause.age)
  )
}

/** @param every valid or not, on samples of whatever duty */
function selected(valid: readonly Result[], every: readonly Result[], { duty }: Asked): Selection {
  const composites = duty === undefined ? valid.filter((result) => dutyOf(result) === 'composite') : []
  const results = 0 < composites.length ? composites : valid
  return {
    found: 'results',
    results,
    passedOver: every.filter((result) => result.valid && !results.includes(result)),
  }
}

/** What verifies is never judged. */
function isOfDuty(test: Pick<Result, 'sampleKind' | 'duty'>, { duty }: Asked): boolean {
  const own = dutyOf(test)
  return duty === undefined ? own !== 'verification' : own === duty
}

/** @param results none of them on a sample that the clause judges */
function otherDuties(results: readonly Result[], { duty }: Asked): SelectionReason | undefined {
  const used = [...new Set(results.map(dutyOf))].sort()
  return used.length === 0 ? undefined : { code: 'other-duties', params: { duty: duty ?? null, used } }
}

const NO_RESULT: SelectionReason = { code: 'no-result', params: {} }

/** @param results by the clause's method, none of which was computed from readings where it asks for that */
function withoutReadings(results: readonly Result[]): SelectionReason | undefined {
  return results.length === 0 ? undefined : { code: 'no-readings', params: {} }
}

/** A mean without its specimens is a figure as much as a finished index is. */
function isFromAsked({ finished, summaryOnly }: Result, { from }: Asked): boolean {
  return from === undefined || (finished === undefined && summaryOnly === undefined)
}

/** "ASTM C430" is the method of a result by "ASTM C430-17". */
function isByMethod({ method }: Result, clause: Asked): boolean {
  if (clause.methodRequired !== true || clause.method === undefined) return true
  return method !== undefined && (method === clause.method || method.startsWith(`${clause.method}-`))
}

/** @param results of the property, none of them by the clause's method */
function otherMethods(results: readonly Result[], { method }: Asked): SelectionReason | undefined {
  const used = [...new Set(results.map((result) => result.method ?? null))]
  return method === undefined || used.length === 0
    ? undefined
    : { code: 'other-methods', params: { method, used } }
}

function awaited(planned: readonly PlannedTest[]): Selection | undefined {
  const due = earliestOf(planned.filter((test) => test.overdueSince === undefined).map((test) => test.due))
  return due === undefined
    ? undefined
    : {
        found: 'none',
        outcome: 'pending',
        reason: { code: 'result-awaited', params: { due: due.text } },
        due,
      }
}

function overdue(planned: readonly PlannedTest[]): SelectionReason | undefined {
  const since = earliestOf(planned.flatMap((test) => test.overdueSince ?? []))
  return since === undefined ? undefined : { code: 'result-overdue', params: { since: since.text } }
}

function notValid(results: readonly Pick<Result, 'reasons'>[]): Selection | undefined {
  if (results.length === 0) return undefined
  const reasons = results.flatMap((result) => result.reasons)
  return { found: 'none', outcome: 'not-valid', reason: { code: 'test-not-valid', params: { reasons } } }
}
