/** On which side of a limit each of two results lies, each judged as it would be alone. */
import { type Clause, type Comparison, includesClass } from '../criteria/criterion.ts'
import {
  type ClassLimit,
  limitsForClass,
  type StatedLimit,
  statedLimit,
} from '../criteria/limits-for-class.ts'
import { compareWithLimit } from '../judging/compare-with-limit.ts'
import { isSameAge } from '../measure/age.ts'
import type { Result } from '../result/result.ts'

/** One limit with the side of it that each result lies on. */
export interface SidesOfLimit {
  readonly clause: string
  readonly limit: StatedLimit
  readonly producer: Side
  readonly agency: Side
  /** Id of the clause that this limit is one of several ways to meet. */
  readonly oneOf?: string
  /** What the other ways change: both sides meet the clause, the sample was not tested for one, or nothing. */
  readonly otherWay?: 'both-meet' | 'not-tested' | 'changes-nothing'
}
export type Side = 'meets' | 'would-not-meet' | 'open'

/** The two results of one test. */
interface Two {
  readonly producer: Result
  readonly agency: Result
}

/**
 * Sides of the limits that a clause sets for a single result of the test.
 * @param lotClass "F"; null where no class is known
 * @param two results of one test
 * @returns none for a clause that is about something else, or that asks for a statistic, a deviation, a premise
 * or a purchaser's request
 * Note: rounded as the clause compares, so that "at most 6.0 %" is still met by 6.04 %; a value known only
 * within bounds on both sides of the limit leaves the side open.
 */
export function sidesOfLimits(clause: Clause, lotClass: string | null, two: Two): SidesOfLimit[] {
  if (clause.form !== 'comparison' || !isOnOneResult(clause, lotClass) || !isOfTest(clause, two.agency))
    return []
  return limitsForClass(clause.limits, lotClass).map((limit) => ({
    clause: clause.id,
    limit: statedLimit(limit),
    producer: sideOf(two.producer, limit, clause),
    agency: sideOf(two.agency, limit, clause),
  }))
}

function isOnOneResult(clause: Comparison, lotClass: string | null): boolean {
  const { statistic, deviation, when, optional, information, classes } = clause
  return (
    statistic === undefined &&
    deviation === undefined &&
    when === undefined &&
    !optional &&
    !information &&
    (classes === undefined || (lotClass !== null && includesClass(classes, lotClass)))
  )
}

function isOfTest({ property, condition, age }: Comparison, result: Result): boolean {
  return (
    property === result.property &&
    (condition === undefined || condition === result.condition) &&
    (age === undefined || isSameAge(age, result.age))
  )
}

function sideOf(result: Result, { operator, quantities }: ClassLimit, { resolution }: Comparison): Side {
  const { answer } = compareWithLimit(result, operator, quantities, resolution)
  if (answer === 'cannot-decide') return 'open'
  return answer === 'met' ? 'meets' : 'would-not-meet'
}
