/** Audit check: shipments that left after an early age had missed its limit, while a later one was awaited. */
import { type ClauseOutcome, everyClauseOutcome } from '../criteria/verdict.ts'
import { dateOf, type Moment, momentOfDay } from '../measure/moment.ts'
import { knownSince, type Result } from '../result/result.ts'
import { type AuditedLot, shippedThen } from './audited.ts'
import { type Checked, lookedOnce } from './checked.ts'
import { found } from './finding.ts'

/** An age that missed its limit, and the day by which a later one was known; null while it is awaited. */
interface Missed {
  readonly early: Result
  readonly known: Moment
  readonly later: Moment | null
}

/**
 * Information on a lot that was shipped on a missed early age: practice calls such a shipment conditional.
 * @param lot with shipments, or without any: then nothing is looked at
 * Notes: 1. asked of alternatives of one property and condition at several ages under the governing set; 2. a shipment of
 * the day on which the early or the later result was known is not held against it.
 */
export function shippedOnMissedAge(lot: AuditedLot): Checked[] {
  if (lot.shipments.length === 0) return []
  const [missed] = [...everyClauseOutcome(lot.verdicts[0]?.clauses ?? [])].flatMap(
    (clause) => missedIn(clause, lot.results) ?? [],
  )
  const between = lot.shipments.filter(
    ({ date }) =>
      missed !== undefined &&
      missed.known.day < date.day &&
      (missed.later === null || date.day < missed.later.day),
  )
  const shipped = shippedThen(between)
  if (missed === undefined || shipped === null) return [lookedOnce('shipped-on-missed-age', [])]
  const { property, condition = null, age, value, decimals, unit } = missed.early
  const test = { property, condition, age: age?.text ?? null, value, decimals, unit }
  const params = { lot: lot.id, shipped, known: dateOf(missed.known).text, ...test }
  return [lookedOnce('shipped-on-missed-age', [found(lot.id, { code: 'shipped-on-missed-age', params })])]
}

/** Of a group of alternatives at several ages: the shortest age, where it missed its limit. */
function missedIn({ combine, clauses = [] }: ClauseOutcome, results: readonly Result[]): Missed | null {
  if (combine !== 'any-of' || clauses.length < 2) return null
  const members = clauses.map((member) => ({ member, result: resultOf(member, results) }))
  const inOrder = members
    .flatMap(({ member, result }) =>
      result?.age === undefined ? [] : [{ member, result, hours: result.age.hours }],
    )
    .sort((a, b) => a.hours - b.hours)
  const [first, ...others] = inOrder
  if (first?.member.outcome !== 'does-not-meet') return null
  const { property, condition } = first.result
  if (others.some(({ result }) => result.property !== property || result.condition !== condition)) return null
  const awaited = members.length - inOrder.length
  const days = others.map(({ result }) => knownSince(result).day)
  const later = 0 < awaited || days.length === 0 ? null : momentOfDay(Math.min(...days))
  return { early: first.result, known: knownSince(first.result), later }
}

function resultOf({ result: key }: ClauseOutcome, results: readonly Result[]): Result | undefined {
  return results.find((result) => result.key === key && result.role === 'producer' && result.valid)
}
