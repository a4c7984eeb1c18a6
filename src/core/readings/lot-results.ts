/** One lot's readings to results: each reading is looked at once. */
import { analysisResults } from '../composition/analysis-results.ts'
import { isBy } from '../measure/moment.ts'
import { knownFrom } from '../mortar/known-when.ts'
import { type Analysis, type LotEvidence, roleOf } from '../mortar/mortar.ts'
import { besideReadings, isReportedFinished } from './finished-results.ts'
import { mortarResults } from './mortar-results.ts'
import { plannedTests } from './planned-tests.ts'
import { isMade, type PlannedTest, type Result, type UnmadeResult } from '../result/result.ts'

/**
 * Everything known of a lot by the as-of date, the producer's tests that were done without giving a value, and what is
 * awaited of the producer.
 * Note: what is tested on a sample that verifies is the agency's, wherever the record lists it.
 */
export function lotResults(lot: LotEvidence): {
  results: Result[]
  unmade: UnmadeResult[]
  planned: PlannedTest[]
} {
  const isOwn = ({ sample }: { readonly sample: string }) => roleOf(sample, lot) === 'producer'
  const known = (analysis: Analysis) => isBy(knownFrom(analysis), lot.asOf)
  const mortars = lot.tests.flatMap((test) => mortarResults(test, lot))
  const reported = lot.analyses
    .filter(known)
    .flatMap((analysis) => analysisResults(analysis, roleOf(analysis.sample, lot), lot))
    .map((result) => besideReadings(result, mortars))
  return {
    results: [
      ...reported,
      ...mortars.filter(isMade),
      ...lot.verification.filter(known).flatMap((analysis) => analysisResults(analysis, 'verification', lot)),
    ],
    unmade: mortars.filter((outcome): outcome is UnmadeResult => !isMade(outcome) && isOwn(outcome)),
    planned: lot.tests
      .filter(isOwn)
      .flatMap((test) => plannedTests(test, lot))
      .filter((test) => !isReportedFinished(test, reported)),
  }
}
