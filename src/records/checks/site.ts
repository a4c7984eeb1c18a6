/** site.yaml against the other records. */
import { checkRequested } from './clause-reference.ts'
import { checkReference, type AllRecords } from './references.ts'
import { checkDate } from './dates.ts'
import type { FileReport } from '../diagnostics/report.ts'
import type { Site } from '../schema/loaded-records.ts'
import { below } from '../yaml/pointer.ts'

export function checkSite(site: Site, all: AllRecords, report: FileReport): void {
  site.criteria.forEach((id, index) => {
    checkReference('criterion', id, `/criteria/${index}`, all, report)
  })
  for (const [set, clauses] of Object.entries(site.requested ?? {})) {
    const at = below('/requested', set)
    checkRequested(set, clauses, { set: at, list: at }, all, report)
  }
  checkDate(site['as-of'], '/as-of', report)
}
