/** One lot's readings to results: each reading is looked at once. */
import { analysisResults } from './analysis-results.ts'
import { dateOf } from './moment.ts'
import type { LotEvidence } from './mortar.ts'
import { mortarResults } from './mortar-results.ts'
import { plannedTests } from './planned-tests.ts'
import type { PlannedTest, Result } from './result.ts'

/** Everything known of a lot by the as-of date, and what is awaited. */
export function lotResults(lot: LotEvidence): { results: Result[]; planned: PlannedTest[] } {
  const known = (analysis: { tested: string }) => dateOf(analysis.tested) <= lot.asOf
  return {
    results: [
      ...lot.analyses.filter(known).flatMap((analysis) => analysisResults(analysis, 'producer', lot)),
      ...lot.tests.flatMap((test) => mortarResults(test, lot)),
      ...lot.verification.filter(known).flatMap((analysis) => analysisResults(analysis, 'verification', lot)),
    ],
    planned: lot.tests.flatMap((test) => plannedTests(test, lot)),
  }
}
