/**
 * How clause outcomes combine. AND takes the worst; OR takes the best that stands, and never lets a route
 * that was not run
 * hide one that failed.
 */
import type { Outcome } from './outcome.ts'

/** Clauses that all must hold, the worst first. */
const ALL_WORST_FIRST: readonly Outcome[] = [
  'does-not-meet',
  'not-valid',
  'not-reported',
  'inconclusive',
  'pending',
  'insufficient-history',
  'meets-by-approval',
  'meets',
]

/** Routes of which one is enough, in the order in which the first present wins. */
const ANY_FIRST_WINS = [
  'meets',
  'meets-by-approval',
  'pending',
  'inconclusive',
  'insufficient-history',
  'not-valid',
  'does-not-meet',
  'not-reported',
] as const satisfies readonly Outcome[]

/** An outcome that says nothing for or against: left out of every combination. */
export function isNeutral(outcome: Outcome): boolean {
  return outcome === 'not-applicable' || outcome === 'not-invoked' || outcome === 'reported'
}

/**
 * The outcome of a group of clauses.
 * @param combine `all-of` or `any-of`
 * @param outcomes those of the members, without members for information
 * @returns the combined outcome; `not-applicable` when every member is neutral
 */
export function combineGroup(combine: 'all-of' | 'any-of', outcomes: readonly Outcome[]): Outcome {
  return firstPresent(combine === 'all-of' ? ALL_WORST_FIRST : ANY_FIRST_WINS, outcomes) ?? 'not-applicable'
}

/** The outcome of a whole set: AND over its clauses; `reported` when every clause is neutral. */
export function combineSet(outcomes: readonly Outcome[]): Outcome {
  return firstPresent(ALL_WORST_FIRST, outcomes) ?? 'reported'
}

/**
 * How bad an outcome is where all clauses must hold.
 * @returns its place in that order: 0 for the worst, last for every neutral one
 */
export function severity(outcome: Outcome): number {
  const place = ALL_WORST_FIRST.indexOf(outcome)
  return place < 0 ? ALL_WORST_FIRST.length : place
}

function firstPresent(order: readonly Outcome[], outcomes: readonly Outcome[]): Outcome | undefined {
  return order.find((candidate) => outcomes.includes(candidate))
}
