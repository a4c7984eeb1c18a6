/** What a check looked at, beside what it found: a list of findings tells little without it. */
import { kept } from '../measure/kept.ts'
import { CHECKS, type CheckId } from './catalogue.ts'
import type { Finding } from './finding.ts'

export interface Checked {
  readonly check: CheckId
  /** Lots, shipments, months, results: how often it asked its question. */
  readonly looked: number
  /** Flags that chance alone would raise in these looks, where the check knows better than the rate of the catalogue. */
  readonly expected?: number
  readonly findings: readonly Finding[]
}

/** A check that asked its question so often. */
export interface CheckLooks {
  readonly check: CheckId
  readonly looked: number
  readonly found: number
  /** Flags that chance alone would raise; null where chance raises none. */
  readonly expected: number | null
}

export interface ChecksRun {
  /** Checks that had anything to look at. */
  readonly run: number
  readonly lots: number
  /** In the order of the catalogue. */
  readonly looks: readonly CheckLooks[]
  /** Looks that are tests, each at its own level of chance. */
  readonly tests: number
  /** Flags that chance alone is expected to raise, with the range that holds their number in 95 of 100 cases. */
  readonly expectedByChance: { readonly low: number; readonly expected: number; readonly high: number }
}

/**
 * A check that looks once at one thing.
 * @param check its id
 * @param findings its own
 */
export function lookedOnce(check: CheckId, findings: readonly Finding[]): Checked {
  return { check, looked: 1, findings }
}

/**
 * The checks as one count.
 * @param checked in any order, several of one check added up
 * @param lots how many lots they are about
 */
export function checksRun(checked: Iterable<Checked | CheckLooks>, lots: number): ChecksRun {
  const counts = new Map<CheckId, { looked: number; found: number; expected: number }>()
  for (const one of checked) {
    const count = kept(counts, one.check, () => ({ looked: 0, found: 0, expected: 0 }))
    count.looked += one.looked
    count.found += 'found' in one ? one.found : one.findings.length
    count.expected += one.expected ?? one.looked * (CHECKS[one.check].rate ?? 0)
  }
  const looks = (Object.keys(CHECKS) as CheckId[]).flatMap((check) => {
    const count = counts.get(check)
    if (count === undefined || count.looked === 0) return []
    return [{ check, ...count, expected: CHECKS[check].rate === undefined ? null : count.expected }]
  })
  const stochastic = looks.filter(({ expected }) => expected !== null)
  const expected = stochastic.reduce((total, one) => total + (one.expected ?? 0), 0)
  const tests = stochastic.reduce((total, { looked }) => total + looked, 0)
  return { run: looks.length, lots, looks, tests, expectedByChance: { expected, ...poissonRange(expected) } }
}

/** Beyond so many the normal distribution serves: own choice. */
const MANY = 500

/**
 * The numbers between which a Poisson count lies in 95 of 100 cases.
 * @param expected its mean, zero or more
 * @returns low is the largest and high the smallest count that at most 2.5 in 100 fall below or exceed
 * Source: flags of many independent looks at a low rate are close to Poisson (common practice, no source).
 */
export function poissonRange(expected: number): { low: number; high: number } {
  if (MANY < expected) {
    const spread = 1.96 * Math.sqrt(expected)
    return { low: Math.floor(expected - spread), high: Math.ceil(expected + spread) }
  }
  let [count, probability, cumulative] = [0, Math.exp(-expected), Math.exp(-expected)]
  let low: number | null = null
  for (;;) {
    if (low === null && TAIL <= cumulative) low = count
    if (1 - TAIL <= cumulative) return { low: low ?? count, high: count }
    count += 1
    probability *= expected / count
    cumulative += probability
  }
}

/** What is left out on either side. */
const TAIL = 0.025
