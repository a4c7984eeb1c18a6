/** What the audit checks say of a source and of its lots. */
import type { SourceAgency } from '../../core/agency/source-agency.ts'
import { agencySourceChecks } from '../../core/checks/agency-differs.ts'
import type { Checked } from '../../core/checks/checked.ts'
import { historyChecks } from '../../core/checks/history-checks.ts'
import { producerNeverFails } from '../../core/checks/producer-never-fails.ts'
import { verificationKept } from '../../core/checks/verification-kept.ts'
import type { Records } from '../../records/load.ts'
import type { LotEntry, ShipmentEntry, SourceEntry } from '../shape/edition.ts'
import { type AuditIndex, type LotChecks, lotAmongAll, ownLotChecks } from './audit.ts'
import { asSiteWants, ownSourceChecks, runOf, sourceAmongAll } from './audit-source.ts'
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

/** What the checks say of a source and its lots that asks nothing of other sources. */
export interface OwnChecks {
  /** In order of sampling. */
  readonly lots: readonly LotChecks[]
  readonly source: readonly Checked[]
}

/** Note: the checks ask for the history of the source. */
export function ownChecks(
  { state, source, lots, several, records }: ToAudit,
  index: Pick<AuditIndex, 'controls' | 'standings'>,
): OwnChecks {
  const agency = source.agency()
  const pairs = Map.groupBy(agency?.pairs ?? [], ({ lot }) => lot)
  return {
    lots: lots.map((lot) => ownLotChecks(lot, records, { state, pairs: pairs.get(lot.id) ?? [] })),
    source: [
      ...ownSourceChecks({ state, lots, several, records, atLimits: source.atLimits() }, index),
      ...(agency === null ? [] : agencyChecks(source.id, agency, lots)),
      ...historyChecks(source.id, source.history()),
    ],
  }
}

/** The lots of a source and the source itself with what the audit checks say today, beside what was found at issue. */
export function auditedSource(
  { state, lots, several, records }: Omit<ToAudit, 'source'>,
  own: OwnChecks,
  index: AuditIndex,
): Pick<SourceEntry, 'findings' | 'checks'> & { readonly lots: readonly LotEntry[] } {
  const checked = [
    ...lots.flatMap((lot, place) => {
      const { first = [], last = [] } = own.lots[place] ?? {}
      return [...first, ...lotAmongAll(lot, records, index), ...last]
    }),
    ...sourceAmongAll(state, several, index),
    ...own.source,
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
