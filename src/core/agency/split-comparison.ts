/** Splits of one test: the same material in two laboratories, pair by pair. */
import { mean, sum } from '../statistics/descriptive.ts'
import { type PairedT, pairedT } from '../statistics/paired-t.ts'
import { areOpposite, byTestDate, isBeyond, type Pair } from './pairs.ts'
import { SHARE_BEYOND, type TestKey } from './precision.ts'

/** Pairs beyond the limit of difference, and how many chance alone puts there. */
export interface BeyondLimit {
  readonly beyond: number
  /** Pairs that have a limit. */
  readonly of: number
  readonly expected: number
}

/** Sum and mean of the differences up to and with a pair. */
export interface Running {
  readonly sum: number
  readonly mean: number
}

export interface SplitComparison extends TestKey {
  /** In order of the agency's tests. */
  readonly pairs: readonly Pair[]
  /** One for each pair; null where the pair has no difference. */
  readonly running: readonly (Running | null)[]
  /** Differences counted. */
  readonly n: number
  /** Mean difference, agency less producer; null without one. */
  readonly mean: number | null
  /** null with fewer than two differences, and where they do not scatter. */
  readonly paired: PairedT | null
  /** null where no pair has a limit of difference. */
  readonly precision: BeyondLimit | null
  /** Pairs on opposite sides of a limit. */
  readonly opposite: number
}

/** Confidence of the interval of a mean difference: common practice, no source. */
export const CONFIDENCE = 0.95

/**
 * Everything that the pairs of one test show.
 * @param pairs of one property, condition and age, at least one, all splits
 * @throws RangeError for none
 */
export function compareSplits(pairs: readonly Pair[]): SplitComparison {
  const [first] = pairs
  if (first === undefined) throw new RangeError('compareSplits needs at least one pair, got none')
  const { property, condition, age } = first
  const ordered = pairs.toSorted(byTestDate)
  const differences = ordered.flatMap(({ difference }) => (difference === null ? [] : [difference]))
  return {
    property,
    condition,
    age,
    pairs: ordered,
    running: runningOf(ordered),
    n: differences.length,
    mean: differences.length === 0 ? null : mean(differences),
    paired: pairedT(differences, CONFIDENCE),
    precision: beyondOf(ordered),
    opposite: ordered.filter(areOpposite).length,
  }
}

function runningOf(pairs: readonly Pair[]): (Running | null)[] {
  const seen: number[] = []
  return pairs.map(({ difference }) => {
    if (difference === null) return null
    seen.push(difference)
    return { sum: sum(seen), mean: mean(seen) }
  })
}

function beyondOf(pairs: readonly Pair[]): BeyondLimit | null {
  const held = pairs.map(isBeyond).filter((beyond) => beyond !== null)
  if (held.length === 0) return null
  const beyond = held.filter((one) => one).length
  return { beyond, of: held.length, expected: SHARE_BEYOND * held.length }
}
