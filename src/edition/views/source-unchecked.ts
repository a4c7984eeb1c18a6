/** What the records of a source do not allow anybody to check, and why. */
import { type CheckId, CHECKS } from '../../core/checks/catalogue.ts'
import type { Edition, SourceEntry } from '../shape/edition.ts'
import { beyondRecords } from './beyond-records.ts'
import { findingsPublished } from './findings.ts'
import { hasListing } from './source-listing.ts'
import type { SourceLot } from './source-lots.ts'

/** What is missing; its sentence stands in the words. */
export type UncheckedCode =
  | 'no-listing'
  | 'no-diversion-ledger'
  | 'no-balance'
  | 'no-number-pattern'
  | 'no-reports'
  | 'no-split'
  | 'no-independent'
  | 'verification-not-published'
  | 'findings-not-published'
  | 'no-bridge'
  | 'no-equipment'
  | 'lots-not-shown'
  | 'severity-lowered'
  | 'no-history-of-records'
  | 'no-notice-of-change'
  | 'no-recipe'
  | 'no-carbon-or-colour'
  | 'no-ammonia-or-sorbents'
  | 'few-readings-alike'

export interface Unchecked {
  readonly code: UncheckedCode
  readonly params: Readonly<Record<string, string | number>>
}

export function uncheckedOf(edition: Edition, source: SourceEntry, lots: readonly SourceLot[]): Unchecked[] {
  const { record } = source
  const published = edition.audience === 'internal' || (edition.site.publish ?? []).includes('verification')
  const kinds = new Set(lots.flatMap(({ verification }) => verification.map(({ kind }) => kind)))
  const missing: [boolean, UncheckedCode][] = [
    [!hasListing(record), 'no-listing'],
    [record.diverted === undefined, 'no-diversion-ledger'],
    [record.balance === undefined, 'no-balance'],
    [record['lot-number-pattern'] === undefined, 'no-number-pattern'],
    [record.reports === undefined, 'no-reports'],
    [published && !kinds.has('split'), 'no-split'],
    [published && !kinds.has('independent'), 'no-independent'],
    [!published, 'verification-not-published'],
    [!findingsPublished(edition), 'findings-not-published'],
  ]
  return [
    ...missing.flatMap(([is, code]) => (is ? [{ code, params: {} }] : [])),
    ...(source.unpublished === 0
      ? []
      : [{ code: 'lots-not-shown', params: { n: source.unpublished } } as const]),
    ...unbridged(edition, lots),
    ...withoutEquipment(edition, lots),
    ...lowered(edition),
    ...beyondRecords(record.kind).map((code) => ({ code, params: {} })),
  ]
}

/** A check whose findings this site shows as information though they are warnings by default. */
function lowered({ site: { checks = {} } }: Edition): Unchecked[] {
  const names = Object.entries(checks)
    .filter(([check, severity]) => severity === 'information' && isWarning(check))
    .map(([check]) => check)
  return names.length === 0
    ? []
    : [{ code: 'severity-lowered', params: { n: names.length, checks: names.join(', ') } }]
}

function isWarning(check: string): boolean {
  return CHECKS[check as CheckId].severity === 'warning'
}

/** Control cements that follow one another at one laboratory without paired batches. */
function unbridged({ laboratories }: Edition, lots: readonly SourceLot[]): Unchecked[] {
  const found = new Map<string, Unchecked>()
  let before: { laboratory: string; cement?: string } | undefined
  for (const { origins } of lots) {
    const now = [...origins.values()].find(({ cement }) => cement !== undefined)
    if (now === undefined) continue
    if (before?.laboratory === now.laboratory && before.cement !== now.cement) {
      const [from = '', to = ''] = [before.cement, now.cement]
      const bridges = laboratories.get(now.laboratory)?.['cement-bridges'] ?? []
      const params = { laboratory: laboratories.get(now.laboratory)?.name ?? now.laboratory, from, to }
      if (!bridges.some((bridge) => [bridge.from, bridge.to].every((one) => one === from || one === to)))
        found.set(`${from}|${to}`, { code: 'no-bridge', params })
    }
    before = now
  }
  return [...found.values()]
}

function withoutEquipment({ laboratories }: Edition, lots: readonly SourceLot[]): Unchecked[] {
  const used = new Set(
    lots.flatMap(({ origins }) => [...origins.values()].map(({ laboratory }) => laboratory)),
  )
  return [...used]
    .filter((id) => laboratories.get(id)?.equipment === undefined)
    .map((id) => ({ code: 'no-equipment', params: { laboratory: laboratories.get(id)?.name ?? id } }))
}
