/** One lot's readings to results: each reading is looked at once. */
import { analysisResults } from '../composition/analysis-results.ts'
import { isBy } from '../measure/moment.ts'
import { knownFrom } from '../mortar/known-when.ts'
import type { Analysis, LotEvidence } from '../mortar/mortar.ts'
import { besideReadings, isReportedFinished } from './finished-results.ts'
import { mortarResults } from './mortar-results.ts'
import { plannedTests } from './planned-tests.ts'
import { isMade, type PlannedTest, type Result, type UnmadeResult } from '../result/result.ts'

/**
 * Everything known of a lot by the as-of date, tests that were done without giving a value, and what is
 * awaited.
 */
export function lotResults(lot: LotEvidence): {
  results: Result[]
  unmade: UnmadeResult[]
  planned: PlannedTest[]
} {
  const known = (analysis: Analysis) => isBy(knownFrom(analysis), lot.asOf)
  const mortars = lot.tests.flatMap((test) => mortarResults(test, lot))
  const reported = lot.analyses
    .filter(known)
    .flatMap((analysis) => analysisResults(analysis, 'producer', lot))
    .map((result) => besideReadings(result, mortars))
  return {
    results: [
      ...reported,
      ...mortars.filter(isMade),
      ...lot.verification.filter(known).flatMap((analysis) => analysisResults(analysis, 'verification', lot)),
    ],
    unmade: mortars.filter((outcome): outcome is UnmadeResult => !isMade(outcome)),
    planned: lot.tests
      .flatMap((test) => plannedTests(test, lot))
      .filter((test) => !isReportedFinished(test, reported)),
  }
}
