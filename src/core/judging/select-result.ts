/** Which results a clause is about, and what stands in their place when there is none to judge. */
import type { Comparison } from '../criteria/criterion.ts'
import { derivedOnDemand } from '../result/derived-values.ts'
import type { Evidence } from '../evidence/evidence.ts'
import { listWords } from '../../words/limit-words.ts'
import { resultReasonWords } from '../../words/result-reasons.ts'
import { property } from '../measure/properties.ts'
import type { PlannedTest, Result } from '../result/result.ts'

type Asked = Pick<Comparison, 'property' | 'condition' | 'age'> &
  Partial<Pick<Comparison, 'method' | 'methodRequired'>>

/** Results to judge, or why there are none. */
export type Selection =
  | { readonly found: 'results'; readonly results: readonly Result[] }
  | { readonly found: 'none'; readonly outcome: 'pending'; readonly reason: string; readonly due: string }
  | { readonly found: 'none'; readonly outcome: 'not-reported' | 'not-valid'; readonly reason: string }

/**
 * The results a clause is judged on: same property, condition and age, valid ones, composites before others.
 * Notes: 1. while one valid result stands, those that are not valid are passed over; 2. without a valid one,
 * a test still
 * awaited makes the clause pending, even where an earlier one broke its method's conditions.
 */
export function selectResults(clause: Asked, evidence: Evidence): Selection {
  const stated = evidence.results.filter((result) => matches(result, clause))
  const any = 0 < stated.length ? stated : derivedOnDemand(clause.property, evidence.results)
  const all = any.filter((result) => isByMethod(result, clause))
  const valid = all.filter((result) => result.valid)
  if (0 < valid.length) {
    const composites = valid.filter((result) => result.sampleKind === 'composite')
    return { found: 'results', results: 0 < composites.length ? composites : valid }
  }
  const planned = evidence.planned.filter(
    (test) =>
      test.property === clause.property && test.condition === clause.condition && test.age === clause.age,
  )
  const unmade = (evidence.unmade ?? []).filter(
    (test) =>
      test.property === clause.property && test.condition === clause.condition && test.age === clause.age,
  )
  return (
    awaited(planned) ??
    notValid([...all, ...unmade]) ?? {
      found: 'none',
      outcome: 'not-reported',
      reason: overdue(planned) ?? otherMethods(any, clause) ?? 'no result is reported',
    }
  )
}

/**
 * Every index belongs to a condition and is never held against another's limit. A water requirement reported
 * without its
 * mortar is the one exception: the method that names the property fixes the mortar.
 */
function matches(result: Result, clause: Asked): boolean {
  if (result.property !== clause.property || result.age !== clause.age) return false
  return (
    result.condition === clause.condition ||
    (result.condition === undefined && clause.property === 'water-requirement')
  )
}

/** "ASTM C430" is the method of a result by "ASTM C430-17". */
function isByMethod({ method }: Result, clause: Asked): boolean {
  if (clause.methodRequired !== true || clause.method === undefined) return true
  return method !== undefined && (method === clause.method || method.startsWith(`${clause.method}-`))
}

function otherMethods(results: readonly Result[], { method }: Asked): string | undefined {
  const used = [...new Set(results.map((result) => result.method ?? 'a method not stated'))]
  return used.length === 0
    ? undefined
    : `only results by ${method} count, and those on record are by ${listWords(used, 'and')}`
}

function awaited(planned: readonly PlannedTest[]): Selection | undefined {
  const dates = planned
    .filter((test) => test.overdueSince === undefined)
    .map((test) => test.due)
    .sort()
  const due = dates[0]
  return due === undefined
    ? undefined
    : { found: 'none', outcome: 'pending', reason: `test recorded, result due ${due}`, due }
}

function overdue(planned: readonly PlannedTest[]): string | undefined {
  const dates = planned
    .map((test) => test.overdueSince)
    .filter((date) => date !== undefined)
    .sort()
  return dates[0] === undefined ? undefined : `the result was awaited until ${dates[0]} and is overdue since`
}

function notValid(results: readonly Pick<Result, 'reasons'>[]): Selection | undefined {
  const reasons = [...new Set(results.flatMap((result) => result.reasons.map(resultReasonWords)))]
  if (results.length === 0) return undefined
  return {
    found: 'none',
    outcome: 'not-valid',
    reason:
      reasons.length === 0 ? 'the test is not valid' : `the test is not valid: ${listWords(reasons, 'and')}`,
  }
}

/** "No. of results, property" for a reason that speaks of another property. */
export function propertyWords(asked: Pick<Asked, 'property'>): string {
  const title = property(asked.property).title
  return /^[A-Z][a-z]{2}/.test(title) ? `${title.charAt(0).toLowerCase()}${title.slice(1)}` : title
}
