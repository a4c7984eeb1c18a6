/** Audit check: a test that the record lists has no result although its due date and the site's grace are past. */
import { awaitedTests } from '../result/awaited-test.ts'
import type { PlannedTest } from '../result/result.ts'
import { type Finding, warningOn } from './finding.ts'

/**
 * A warning for each result that a lot still lacks after its due date, the tolerance of its age and the grace.
 * @param lot id as SOURCE/LOT, and its planned tests as of a date
 * @returns none for a withdrawn lot, of which nobody awaits a result any more
 */
export function overdueFindings(lot: {
  readonly id: string
  readonly state: string
  readonly planned: readonly PlannedTest[]
}): Finding[] {
  if (lot.state === 'withdrawn') return []
  return awaitedTests(lot.planned).flatMap(
    ({ property, condition, age, unread, due, overdueSince }): Finding[] => {
      if (overdueSince === undefined) return []
      const test = { lot: lot.id, property, condition, age: age.text, unread }
      const params = { ...test, due: due.text, since: overdueSince.text }
      return [warningOn(lot.id, { code: 'result-overdue', params }, property, condition, age.text)]
    },
  )
}
