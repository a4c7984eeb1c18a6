/**
 * What the audit checks found, as a public edition may tell it: without lots that are not shown, without what rests on an
 * agency's results where these are not published, and counted as it is listed.
 */
import { CHECKS } from '../../core/checks/catalogue.ts'
import { type ChecksRun, checksRun } from '../../core/checks/checked.ts'
import type { Finding } from '../../core/checks/finding.ts'
import { sourceOf } from '../../core/measure/lot-id.ts'
import { roleOf } from '../../core/mortar/mortar.ts'
import type { LotEntry, SourceEntry } from './edition.ts'

/** What site.yaml publishes. */
type Publish = ReadonlySet<string>

/** Ids of the lots that are not shown. */
export type Hidden = ReadonlySet<string>

export interface Withholding {
  readonly publish: Publish
  readonly hidden: Hidden
}

/**
 * Findings about a source, and how often the checks looked at it and at its lots.
 * @param lots of the source that are shown, whole
 */
export function publicAudit(
  source: SourceEntry,
  lots: readonly LotEntry[],
  withhold: Withholding,
): Pick<SourceEntry, 'findings' | 'checks'> {
  const { hidden } = withhold
  const ofShown = hidesLotsOf(source.id, hidden) ? source.auditOf((id) => !hidden.has(id)) : source
  const findings = publicFindings(foundOf(source, ofShown, hidden), withhold)
  const listed = [...findings, ...lots.flatMap((lot) => publicLotFindings(lot, withhold))]
  return { findings, checks: publicChecks(ofShown.checks, listed, { lots: lots.length, ...withhold }) }
}

/**
 * All lots count for what is asked of a source, but what is found of lots alone that are not shown is theirs, and what is
 * counted lot by lot is counted of those that are shown.
 */
function foundOf(
  source: SourceEntry,
  ofShown: Pick<SourceEntry, 'findings'>,
  hidden: Hidden,
): readonly Finding[] {
  if (ofShown === source) return source.findings
  const isCounted = ({ reason }: Finding) => CHECKS[reason.code].countsLots === true
  const codes = new Set(ofShown.findings.map(({ reason }) => reason.code))
  return [
    ...source.findings.filter(
      (finding) => !isCounted(finding) && (codes.has(finding.reason.code) || !isOfHidden(finding, hidden)),
    ),
    ...ofShown.findings.filter(isCounted),
  ]
}

/** Whether it names lots of its source, none of which is shown. */
function isOfHidden({ about, reason }: Finding, hidden: Hidden): boolean {
  const lots = textsOf(reason.params).filter((text) => text.startsWith(`${about}/`))
  return 0 < lots.length && lots.every((lot) => hidden.has(lot))
}

/** Every text in a plain value. */
export function textsOf(value: unknown): string[] {
  if (typeof value === 'string') return [value]
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(textsOf) : []
}

/** What is found on an agency's sample is the agency's, whatever the check. */
export function publicLotFindings(
  { findings, record }: Pick<LotEntry, 'findings' | 'record'>,
  withhold: Withholding,
): readonly Finding[] {
  const isAgencys = ({ reason: { params } }: Finding) =>
    'sample' in params &&
    typeof params.sample === 'string' &&
    roleOf(params.sample, record) === 'verification'
  const shown = withhold.publish.has('verification')
    ? findings
    : findings.filter((finding) => !isAgencys(finding))
  return publicFindings(shown, withhold)
}

/**
 * As often as it is listed, each flag counts; a check of the agency's results is not among those that were run where these
 * are not published.
 */
function publicChecks(
  { looks }: ChecksRun,
  listed: readonly Finding[],
  { lots, publish }: { readonly lots: number; readonly publish: Publish },
): ChecksRun {
  const flags = Map.groupBy(listed, ({ reason }) => reason.code)
  const shown = looks
    .filter(({ check }) => publish.has('verification') || CHECKS[check].onVerification !== true)
    .map((look) => ({ ...look, found: flags.get(look.check)?.length ?? 0 }))
  return checksRun(shown, lots)
}

export function publicFindings(
  findings: readonly Finding[],
  { publish, hidden }: Withholding,
): readonly Finding[] {
  if (!publish.has('findings')) return []
  return findings
    .filter(({ reason }) => publish.has('verification') || CHECKS[reason.code].onVerification !== true)
    .filter(({ reason, about }) => CHECKS[reason.code].sumsLots !== true || !hidesLotsOf(about, hidden))
    .map((finding) => publicFinding(withoutWithheldPlaces(finding, publish), hidden))
}

/** Of a source. */
function hidesLotsOf(source: string, hidden: Hidden): boolean {
  return [...hidden].some((lot) => sourceOf(lot) === source)
}

/** A record holds what is withheld, and so does what differs from it: the place is named, and not what it holds. */
function withoutWithheldPlaces(finding: Finding, publish: Publish): Finding {
  const { reason } = finding
  if (reason.code !== 'changed-after-issue') return finding
  const changes = reason.params.changes.map((change) =>
    isPublic(change.path, publish)
      ? change
      : { path: change.path, issued: null, today: null, withheld: true as const },
  )
  return { ...finding, reason: { ...reason, params: { ...reason.params, changes } } }
}

/** Whether the place itself, and all that lies below it, may be shown. */
function isPublic([record, list, entry, ...rest]: readonly string[], publish: Publish): boolean {
  const [persons, seals] = [publish.has('persons'), publish.has('seals')]
  if (record !== 'lot') return true
  if (list === 'seals') return seals
  if (list === 'purchase-order') return publish.has('purchase-order')
  if (list !== 'samples') return true
  const [member] = rest
  if (entry === undefined || member === undefined) return persons && seals
  return member === 'by' ? persons : member === 'seal' ? seals : true
}

/**
 * A lot that is not shown is not named by the finding of another, nor of its source: an id stands bare in a list, or as
 * `lot` beside what is said of it, and either gives way to null.
 */
function publicFinding({ reason, ...finding }: Finding, hidden: Hidden): Finding {
  const params = Object.fromEntries(
    Object.entries(reason.params).map(([name, value]) => [name, withoutHidden(value, hidden)]),
  )
  return { ...finding, reason: { ...reason, params } as Finding['reason'] }
}

function withoutHidden(value: unknown, hidden: Hidden): unknown {
  if (Array.isArray(value)) return value.map((member) => withoutHidden(member, hidden))
  if (typeof value === 'string') return hidden.has(value) ? null : value
  if (typeof value !== 'object' || value === null) return value
  if ('lot' in value && typeof value.lot === 'string' && hidden.has(value.lot)) return null
  return Object.fromEntries(
    Object.entries(value).map(([name, member]) => [name, withoutHidden(member, hidden)]),
  )
}
