/** site.yaml against the other records. */
import { checkNameOfCheck } from './answers.ts'
import { checkInvoked, checkRequested } from './clause-reference.ts'
import { checkPrecision } from './precision.ts'
import { checkReference, type AllRecords } from './references.ts'
import { checkDate } from './dates.ts'
import type { FileReport } from '../diagnostics/report.ts'
import type { Site } from '../schema/loaded-records.ts'
import { below } from '../yaml/pointer.ts'

/** Names at the root of the output that every build writes, or may write. */
export const BUILT_NAMES: readonly string[] = [
  '404.html',
  '_astro',
  'comparison',
  'conditions',
  'criteria',
  'data',
  'due',
  'feed.xml',
  'findings',
  'index.html',
  'laboratories',
  'limits',
  'look-up',
  'lots',
  'methods',
  'register',
  'routes',
  'schemas',
  'shipments',
  'sitemap.xml',
  'sources',
]

export function checkSite(site: Site, all: AllRecords, report: FileReport): void {
  site.criteria.forEach((id, index) => {
    checkReference('criterion', id, `/criteria/${index}`, all, report)
  })
  for (const [set, clauses] of Object.entries(site.requested ?? {})) {
    const at = below('/requested', set)
    checkRequested(set, clauses, { set: at, list: at }, all, report)
  }
  site.projects?.forEach(({ criteria }, place) => {
    checkInvoked(criteria, `/projects/${place}/criteria`, all, report)
  })
  checkDate(site['as-of'], '/as-of', report)
  checkAddress(site.address, report)
  checkKept(site.keep ?? [], report)
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

/** What the build writes itself cannot be the owner's; without regard to case, as some disks see names. */
function checkKept(keep: readonly string[], report: FileReport): void {
  for (const [index, name] of keep.entries())
    if (BUILT_NAMES.includes(name.toLowerCase()))
      report.at(
        `/keep/${index}`,
        'schema',
        `${name} is listed under keep, and the build writes it itself`,
        `take ${name} out of keep; what is yours must have another name`,
      )
}
