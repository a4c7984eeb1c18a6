/** What a lot still waits for. */
import { earliestOf, type Moment } from '../../core/measure/moment.ts'
import { defined } from '../../core/measure/defined.ts'
import type { PlannedTest } from '../../core/result/result.ts'

export interface Awaited {
  /** When the next result is due. */
  readonly due?: Moment
  /** Last date on which a result that never came was awaited; the first of them. */
  readonly overdueSince?: Moment
}

export function awaitedOf(planned: readonly Pick<PlannedTest, 'due' | 'overdueSince'>[]): Awaited {
  const due = planned.filter((test) => test.overdueSince === undefined).map((test) => test.due)
  const overdue = planned.flatMap(({ overdueSince }) => overdueSince ?? [])
  return defined({ due: earliestOf(due), overdueSince: earliestOf(overdue) })
}
