/** What the audit checks say of a source and of its lots. */
import type { SourceAgency } from '../../core/agency/source-agency.ts'
import { agencySourceChecks } from '../../core/checks/agency-differs.ts'
import type { Checked } from '../../core/checks/checked.ts'
import { historyChecks } from '../../core/checks/history-checks.ts'
import { producerNeverFails } from '../../core/checks/producer-never-fails.ts'
import { verificationKept } from '../../core/checks/verification-kept.ts'
import type { Records } from '../../records/load.ts'
import type { LotEntry, ShipmentEntry, SourceEntry } from '../shape/edition.ts'
import { type AuditIndex, auditLot } from './audit.ts'
import { asSiteWants, auditSource, runOf } from './audit-source.ts'
import type { SourceState } from './source-state.ts'

export interface ToAudit {
  readonly state: SourceState
  readonly source: Omit<SourceEntry, 'findings' | 'checks'>
  /** In order of sampling. */
  readonly lots: readonly LotEntry[]
  /** Shipments that may have come from several lots. */
  readonly several: readonly ShipmentEntry[]
  readonly records: Records
}

/**
 * The lots of a source and the source itself with what the audit checks say today, beside what was found at issue.
 * Note: the checks ask for the history of the source.
 */
export function auditedSource(
  { state, source, lots, several, records }: ToAudit,
  index: AuditIndex,
): Pick<SourceEntry, 'findings' | 'checks'> & { readonly lots: readonly LotEntry[] } {
  const agency = source.agency()
  const pairs = Map.groupBy(agency?.pairs ?? [], ({ lot }) => lot)
  const checked = [
    ...lots.flatMap((lot) => auditLot(lot, records, { state, pairs: pairs.get(lot.id) ?? [] }, index)),
    ...auditSource({ state, lots, several, records, atLimits: source.atLimits() }, index),
    ...(agency === null ? [] : agencyChecks(source.id, agency, lots)),
    ...historyChecks(source.id, source.history()),
  ]
  const about = Map.groupBy(
    [...lots.flatMap(({ findings }) => findings), ...checked.flatMap(({ findings }) => findings)],
    (finding) => finding.about,
  )
  const of = (id: string) => (about.get(id) ?? []).map((finding) => asSiteWants(finding, records.site))
  return {
    lots: lots.map((lot) => ({ ...lot, findings: of(lot.id) })),
    findings: of(state.id),
    checks: runOf(checked, lots),
  }
}

function agencyChecks(source: string, agency: SourceAgency, lots: readonly LotEntry[]): Checked[] {
  const pairs = [...agency.split, ...agency.independent].flatMap((test) => test.pairs)
  return [
    ...agencySourceChecks(source, agency),
    ...verificationKept(source, agency),
    producerNeverFails(source, lots, pairs),
  ]
}
