/** Findings as pages list them, each with the certificate that it is about. */
import { compareMoments } from '../../core/measure/moment.ts'
import type { Finding } from '../../core/checks/finding.ts'
import { type WordedFinding, wordedFinding } from '../../words/findings.ts'
import { findingNames, type NamingEdition } from '../shape/finding-names.ts'
import type { Edition, ListedLot } from '../shape/edition.ts'

export interface ListedFinding extends WordedFinding {
  /** The lot that it is about, where it has a page. */
  readonly lot?: string
}

export interface FindingsView {
  /** Whether this audience may see findings at all. */
  readonly published: boolean
  /** Those there are, the gravest first. */
  readonly groups: readonly { readonly heading: string; readonly findings: readonly ListedFinding[] }[]
}

const HEADINGS = { blocks: 'Blocks', warning: 'Warnings', information: 'Information' } as const

/** All findings of an edition: those about sources, then those about lots, the newest lot first. */
export function findingsView(edition: Edition): FindingsView {
  const about = [...edition.sources.values()].flatMap(({ id, findingCount }) =>
    findingCount === 0 ? [] : edition.source(id).findings,
  )
  const findings = [...about, ...findingsOfLots(edition, [...edition.lots.values()].sort(newestFirst))]
  const bySeverity = Map.groupBy(findings, ({ severity }) => severity)
  return {
    published: findingsPublished(edition),
    groups: (['blocks', 'warning', 'information'] as const).flatMap((severity) => {
      const own = bySeverity.get(severity)
      return own === undefined
        ? []
        : [{ heading: HEADINGS[severity], findings: listedFindings(edition, own) }]
    }),
  }
}

/** Whether findings may be shown to the edition's audience. */
export function findingsPublished({ audience, site }: Pick<Edition, 'audience' | 'site'>): boolean {
  return audience === 'internal' || (site.publish ?? []).includes('findings')
}

/** Findings of lots, in the order of the lots. */
export function findingsOfLots(edition: Pick<Edition, 'lot'>, lots: readonly ListedLot[]): Finding[] {
  return lots.flatMap(({ id, findingCount }) => (findingCount === 0 ? [] : edition.lot(id).findings))
}

export function listedFindings(edition: NamingEdition, findings: readonly Finding[]): ListedFinding[] {
  const names = findingNames(edition)
  return findings.map((finding) => {
    const worded = wordedFinding(finding, names)
    return edition.lots.has(finding.about) ? { ...worded, lot: finding.about } : worded
  })
}

function newestFirst(a: ListedLot, b: ListedLot): number {
  return compareMoments(b.sampled, a.sampled)
}
