/** Every check that reads the history of a source. */
import type { SourceHistory } from '../history/source-history.ts'
import type { Checked } from './checked.ts'
import { chartChecks } from './control-chart.ts'
import { indexFollowsControl } from './index-follows-control.ts'
import { marginsShrinking } from './margin-shrinking.ts'
import { monthsApart } from './month-effect.ts'
import { resultsDrift } from './results-drift.ts'
import { stepsAtEvents } from './step-at-event.ts'
import { uniformityExceeded } from './uniformity-exceeded.ts'

/**
 * What the history of a source gives reason to ask; nothing is computed again.
 * @param source id
 * @param history as of a day, with every lot named
 */
export function historyChecks(source: string, history: SourceHistory): Checked[] {
  return [
    ...chartChecks(source, history),
    resultsDrift(source, history),
    stepsAtEvents(source, history),
    monthsApart(source, history),
    marginsShrinking(source, history),
    uniformityExceeded(source, history),
    indexFollowsControl(source, history),
  ]
}
