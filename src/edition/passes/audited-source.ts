/** What the audit checks say of a source and of its lots. */
import type { SourceAgency } from '../../core/agency/source-agency.ts'
import { agencySourceChecks } from '../../core/checks/agency-differs.ts'
import type { Checked } from '../../core/checks/checked.ts'
import type { Finding } from '../../core/checks/finding.ts'
import { historyChecks } from '../../core/checks/history-checks.ts'
import { producerNeverFails } from '../../core/checks/producer-never-fails.ts'
import { verificationKept } from '../../core/checks/verification-kept.ts'
import type { Records } from '../../records/load.ts'
import type { LotEntry, ShipmentEntry, SourceEntry } from '../shape/edition.ts'
import { type AuditIndex, type LotChecks, ownLotChecks } from './audit.ts'
import { asSiteWants, ownSourceChecks, runOf, sourceAmongAll } from './audit-source.ts'
import type { FoundBeside } from './found-beside.ts'
import { MADE_ANEW, type PartsOfLots } from './parts-of-lots.ts'
import { isSettled } from './rests-on.ts'
import type { SourceState } from './source-state.ts'

export interface ToAudit {
  readonly state: SourceState
  readonly source: Omit<SourceEntry, 'findings' | 'checks' | 'auditOf'>
  /** In order of sampling. */
  readonly lots: readonly LotEntry[]
  /** Shipments that may have come from several lots. */
  readonly several: readonly ShipmentEntry[]
  readonly records: Records
  /** Gives what was said of a lot before; asks every lot without it. */
  readonly known?: PartsOfLots['of']
}

/** What the checks say of a source and its lots that asks nothing of other sources. */
export interface OwnChecks {
  /** In order of sampling. */
  readonly lots: readonly LotChecks[]
  readonly source: readonly Checked[]
  /** The same with some of its lots alone. */
  readonly sourceOf: (isShown: IsShown) => readonly Checked[]
}

type IsShown = (lot: string) => boolean

/** Note: the checks ask for the history of the source. */
export function ownChecks(
  { state, source, lots, several, records, known = MADE_ANEW.of }: ToAudit,
  index: Pick<AuditIndex, 'controls' | 'standings'>,
): OwnChecks {
  const pairs = Map.groupBy(source.agency()?.pairs ?? [], ({ lot }) => lot)
  const sourceOf = (isShown?: IsShown) => {
    const agency = source.agency(isShown)
    const shown = shownOf(lots, several, isShown)
    return [
      ...ownSourceChecks({ state, ...shown, records, atLimits: source.atLimits(isShown) }, index),
      ...(agency === null ? [] : agencyChecks(source.id, agency, shown.lots)),
      ...historyChecks(source.id, source.history()),
    ]
  }
  return {
    lots: lots.map((lot, place) =>
      known(
        place,
        () => ownLotChecks(lot, records, { state, pairs: pairs.get(lot.id) ?? [] }),
        () => isSettled(lot),
      ),
    ),
    source: sourceOf(),
    sourceOf,
  }
}

function shownOf(
  lots: readonly LotEntry[],
  several: readonly ShipmentEntry[],
  isShown: IsShown = () => true,
): Pick<ToAudit, 'lots' | 'several'> {
  return {
    lots: lots.filter(({ id }) => isShown(id)),
    several: several.filter((shipment) => shipment.lots.some(isShown)),
  }
}

/** The lots of a source and the source itself with what the audit checks say today, beside what was found at issue. */
export function auditedSource(
  { state, lots, several, records }: Omit<ToAudit, 'source' | 'known'>,
  { own, beside }: { readonly own: OwnChecks; readonly beside: FoundBeside },
  index: AuditIndex,
): Pick<SourceEntry, 'findings' | 'checks' | 'auditOf'> & { readonly lots: readonly LotEntry[] } {
  const checkedOf = (ofSource: readonly Checked[], isShown?: IsShown) => [
    ...lots.flatMap((lot, place) => {
      if (isShown?.(lot.id) === false) return []
      const { first = [], last = [] } = own.lots[place] ?? {}
      return [...first, ...(beside.lots[place] ?? []), ...last]
    }),
    ...(isShown === undefined
      ? beside.source
      : sourceAmongAll(state, shownOf(lots, several, isShown).several, index)),
    ...ofSource,
  ]
  const checked = checkedOf(own.source)
  const about = Map.groupBy(
    [...lots.flatMap(({ findings }) => findings), ...checked.flatMap(({ findings }) => findings)],
    (finding) => finding.about,
  )
  const asWanted = (findings: readonly Finding[]) =>
    findings.map((finding) => asSiteWants(finding, records.site))
  return {
    lots: lots.map((lot) => ({ ...lot, findings: asWanted(about.get(lot.id) ?? []) })),
    findings: asWanted(about.get(state.id) ?? []),
    checks: runOf(checked, lots),
    auditOf: (isShown) => {
      const ofShown = checkedOf(own.sourceOf(isShown), isShown)
      const findings = ofShown.flatMap((one) => one.findings).filter((one) => one.about === state.id)
      return { findings: asWanted(findings), checks: runOf(ofShown, shownOf(lots, several, isShown).lots) }
    },
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
