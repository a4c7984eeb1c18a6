/** The digest of a plan against the plan as it is written today. */
import type { FileReport } from '../diagnostics/report.ts'
import type { Study } from '../schema/loaded-records.ts'
import { digestStanding, planDigest } from './plan-digest.ts'

/**
 * Warns of a plan without a digest where readings exist, and of one that is not what was digested. Neither changes a figure.
 * @param study one with a fault is left alone: its plan is still to be mended
 * @param readings how many it has
 */
export function checkPlanDigest(study: Study, readings: number, report: FileReport): void {
  if (0 < report.count()) return
  const standing = digestStanding(study)
  if (standing === 'none' && 0 < readings)
    report.warnAt(
      '/plan/fixed',
      'plan-digest',
      'the study has readings, and its plan carries no digest',
      `add under plan: digest: ${planDigest(study)}`,
    )
  if (standing === 'differs')
    report.warnAt(
      '/plan/digest',
      'plan-digest',
      'the plan has changed since it was digested',
      `restore it; or list under departures what changed and why, then write digest: ${planDigest(study)}`,
    )
}
