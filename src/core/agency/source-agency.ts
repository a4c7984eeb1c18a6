/** What an agency's results say of one source, beside its producer's, as known on a date. */
import { representative } from '../history/representative.ts'
import type { Moment } from '../measure/moment.ts'
import { isBounded } from '../result/bounds.ts'
import type { Result } from '../result/result.ts'
import {
  compareIndependent,
  type IndependentComparison,
  type ProducerValue,
} from './independent-comparison.ts'
import { type ComparedLot, type Pair, pairsOfLot, testName } from './pairs.ts'
import type { PrecisionRow } from './precision.ts'
import { compareSplits, type SplitComparison } from './split-comparison.ts'
import {
  levelOf,
  type PlannedVerification,
  type TakenSample,
  type VerificationStatus,
  verificationStatus,
} from './verification-status.ts'

export interface SourceAgency {
  readonly asOf: Moment
  /** Of every lot, in order of sampling, splits and independent samples alike. */
  readonly pairs: readonly Pair[]
  /** Samples on record by kind. */
  readonly splits: number
  readonly independents: number
  /** Of them, those taken of lots that were withdrawn since, which are not compared. */
  readonly ofWithdrawn: { readonly split: number; readonly independent: number }
  /** Lots of samples whose custody is not stated, a lot for each sample. */
  readonly withoutCustody: readonly string[]
  /** One for each test and class, in the order of their first pair. */
  readonly independent: readonly IndependentComparison[]
  readonly split: readonly SplitComparison[]
  readonly status: readonly VerificationStatus[]
}

/** What the comparison of a source rests on. */
export interface AgencyEvidence {
  readonly asOf: Moment
  /** In order of sampling. */
  readonly lots: readonly ComparedLot[]
  readonly samples: readonly TakenSample[]
  readonly plan: readonly PlannedVerification[]
  readonly precision: readonly PrecisionRow[]
}

/**
 * Compares an agency with a producer.
 * @returns splits and independent samples apart; empty lists where there are none
 * Note: withdrawn lots count on neither side.
 */
export function sourceAgency({ asOf, lots, samples, plan, precision }: AgencyEvidence): SourceAgency {
  const pairs = lots.flatMap((lot) => pairsOfLot(lot, precision))
  const byTest = (kind: Pair['kind']) => [
    ...Map.groupBy(
      pairs.filter((pair) => pair.kind === kind),
      (pair) => `${pair.class ?? ''}|${testName(pair)}`,
    ),
  ]
  const independents = byTest('independent')
  const withdrawn = new Set(lots.filter((lot) => lot.withdrawn !== undefined).map(({ id }) => id))
  const ofWithdrawn = (kind: Pair['kind']) =>
    samples.filter((sample) => sample.kind === kind && withdrawn.has(sample.lot)).length
  const producers = producerValues(lots, new Set(independents.map(([key]) => key)))
  return {
    asOf,
    pairs,
    splits: samples.filter(({ kind }) => kind === 'split').length,
    independents: samples.filter(({ kind }) => kind === 'independent').length,
    ofWithdrawn: { split: ofWithdrawn('split'), independent: ofWithdrawn('independent') },
    withoutCustody: samples.filter(({ custody }) => custody === undefined).map(({ lot }) => lot),
    independent: independents.flatMap(([key, own]) => {
      const found = compareIndependent(own, producers.get(key) ?? [], levelOf(plan))
      return found === null ? [] : [found]
    }),
    split: byTest('split').map(([, own]) => compareSplits(own)),
    status: verificationStatus(plan, samples, asOf),
  }
}

/** The producer's value of each lot for the tests asked about, by class and test. */
function producerValues(
  lots: readonly ComparedLot[],
  asked: ReadonlySet<string>,
): Map<string, ProducerValue[]> {
  const found = new Map<string, ProducerValue[]>()
  if (asked.size === 0) return found
  for (const lot of lots) {
    if (lot.withdrawn !== undefined) continue
    for (const [key, results] of Map.groupBy(
      ownResults(lot),
      (result) => `${lot.class ?? ''}|${testName(result)}`,
    )) {
      const result = asked.has(key) ? representative(results) : undefined
      if (result === undefined || isBounded(result)) continue
      const values = found.get(key) ?? []
      values.push({ sampled: lot.sampled, value: result.value })
      found.set(key, values)
    }
  }
  return found
}

function ownResults({ results }: ComparedLot): Result[] {
  return results.filter((result) => result.valid && result.role === 'producer')
}
