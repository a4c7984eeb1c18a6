/** site.yaml against the other records. */
import { checkNameOfCheck } from './answers.ts'
import { checkRequested } from './clause-reference.ts'
import { checkPrecision } from './precision.ts'
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
  checkAddress(site.address, report)
  checkPrecision(site, all, report)
  for (const check of Object.keys(site.checks ?? {})) checkNameOfCheck(check, below('/checks', check), report)
}

/** The form alone lets a port or a host through that no address has. */
function checkAddress(address: string | undefined, report: FileReport): void {
  if (address === undefined || URL.canParse(address)) return
  report.at(
    '/address',
    'schema',
    `"${address}" is no address: its host or its port cannot be`,
    'write an address such as https://example.org/pozzolans/, with a port from 1 to 65535 if any',
  )
}
