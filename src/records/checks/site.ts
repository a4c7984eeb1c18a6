/** site.yaml against the other records. */
import { checkRequested } from './clause-reference.ts'
import { checkReference, type Known } from './known.ts'
import { checkDate } from './dates.ts'
import type { FileReport } from '../diagnostics/report.ts'
import type { Site } from '../schema/loaded-records.ts'
import { escapePointer } from '../yaml/yaml-source.ts'

export function checkSite(site: Site, known: Known, report: FileReport): void {
  site.criteria.forEach((id, index) => {
    checkReference('criterion', id, `/criteria/${index}`, known, report)
  })
  for (const [set, clauses] of Object.entries(site.requested ?? {})) {
    const at = `/requested/${escapePointer(set)}`
    checkRequested(set, clauses, { set: at, list: at }, known, report)
  }
  checkDate(site['as-of'], '/as-of', report)
}
