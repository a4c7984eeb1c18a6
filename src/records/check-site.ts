/** site.yaml against the other records. */
import { checkReference, type Known } from './known.ts'
import { checkDate } from './check-dates.ts'
import type { FileReport } from './report.ts'
import type { Site } from './types.ts'

export function checkSite(site: Site, known: Known, report: FileReport): void {
  site.criteria.forEach((id, index) => { checkReference('criterion', id, `/criteria/${index}`, known, report) })
  checkDate(site['as-of'], '/as-of', report)
}
