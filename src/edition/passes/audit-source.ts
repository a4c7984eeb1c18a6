/** Pass 4 for sources: what the audit checks say of a source as a whole, its lots looked at once. */
import { balanceKept } from '../../core/checks/balance-kept.ts'
import { classBesideCalcium } from '../../core/checks/class-and-calcium.ts'
import { feedRising } from '../../core/checks/feed-rising.ts'
import { sampledInOutage } from '../../core/checks/in-outage.ts'
import { laboratoriesChanged } from '../../core/checks/laboratory-changes.ts'
import { lotsAlike } from '../../core/checks/lots-alike.ts'
import { periodEstimatesBeyond } from '../../core/checks/period-estimate-beyond.ts'
import { retests } from '../../core/checks/retests.ts'
import { agesLeftOut } from '../../core/checks/age-left-out.ts'
import { type AtLimit, bunchedAtLimits } from '../../core/checks/at-the-limits.ts'
import { type CheckId, CHECKS } from '../../core/checks/catalogue.ts'
import { type Checked, type ChecksRun, checksRun } from '../../core/checks/checked.ts'
import type { Finding } from '../../core/checks/finding.ts'
import { scatterSmall, specimensExcluded, unevenLastDigits } from '../../core/checks/raw-readings.ts'
import { sharedShipmentFindings } from '../../core/checks/shipped.ts'
import { laboratoryChecks, type ProficiencyRecord } from '../../core/checks/laboratories.ts'
import { shippedUnlisted } from '../../core/checks/listing.ts'
import { numberGaps } from '../../core/checks/lot-numbers.ts'
import { reportFindings } from '../../core/checks/monthly-reports.ts'
import { castApart } from '../../core/checks/samples-and-castings.ts'
import { behindPlan } from '../../core/checks/sampling-plan.ts'
import { beforeCompletion, unshipped } from '../../core/checks/shipping-days.ts'
import { type AuditedLaboratory, testsOfSource } from '../../core/checks/tests-of-source.ts'
import { nameInSource } from '../../core/measure/lot-id.ts'
import type { Records } from '../../records/load.ts'
import type { Laboratory, Site } from '../../records/schema/loaded-records.ts'
import { accreditationFor, hasAccreditation } from './accreditation.ts'
import type { LotEntry, ShipmentEntry } from '../shape/edition.ts'
import type { AuditIndex } from './audit.ts'
import { keptBalance } from './kept-balance.ts'
import { madeTests, readBatches, stepsOfDevices } from './raw-readings.ts'
import { byDateAndBill } from '../shape/shipment-order.ts'
import type { SourceState } from './source-state.ts'

export interface AuditedEntries {
  readonly state: SourceState
  /** In order of sampling. */
  readonly lots: readonly LotEntry[]
  /** Shipments that may have come from several lots. */
  readonly several: readonly ShipmentEntry[]
  readonly records: Records
  /** As the page of the source shows them. */
  readonly atLimits: readonly AtLimit[]
}

/** What the checks say of one source by itself; some of it is about single lots. */
export function ownSourceChecks(
  { state, lots, several, records, atLimits }: AuditedEntries,
  { controls, standings }: Pick<AuditIndex, 'controls' | 'standings'>,
): Checked[] {
  const { id, record, asOf, history, faultyNumbers } = state
  const shipments = [...lots.flatMap((lot) => lot.shipments), ...several].sort(byDateAndBill)
  return [
    numberGaps({
      source: id,
      pattern: record['lot-number-pattern'],
      accounted: [
        ...(record['numbers-not-used'] ?? []).map(({ number }) => number),
        ...faultyNumbers,
        ...lots.flatMap(({ formerly }) => formerly.map(nameInSource)),
      ],
      lots,
    }),
    ...reportsOf(state),
    behindPlan({ source: id, plan: record['sampling-plan'] ?? [], history, lots }, asOf),
    unshipped(lots, asOf),
    beforeCompletion(id, lots),
    shippedUnlisted({
      source: id,
      listing: record.listing ?? [],
      approvals: (record.approvals ?? []).filter(({ set }) => set === undefined),
      shipments,
    }),
    ...testsOfSource({
      source: id,
      lots,
      laboratory: (one) => laboratoryOf(records.laboratories.get(one), records.conditions),
    }),
    castApart(id, lots),
    laboratoriesChanged(id, lots),
    periodEstimatesBeyond(id, lots),
    ...identityOf(state, lots),
    ...balanceKept(keptBalance(state, lots, several)),
    ...integrityOf({ state, lots, records, atLimits }),
    ...laboratoryChecks(
      { source: id, lots, controls, standings, records: proficiencyOf(records.laboratories) },
      asOf,
    ),
  ]
}

/** How readings and results came about. */
function integrityOf({
  state: { id, record },
  lots,
  records,
  atLimits,
}: Omit<AuditedEntries, 'several'>): Checked[] {
  const batches = readBatches(lots, records)
  return [
    bunchedAtLimits(id, atLimits, record.diverted?.length ?? 0),
    unevenLastDigits(id, batches, stepsOfDevices(records)),
    scatterSmall(id, batches),
    specimensExcluded(id, batches),
    agesLeftOut(id, lots),
    lotsAlike(id, lots),
    retests(id, madeTests(lots)),
  ]
}

/** Whether the material is still the same. */
function identityOf(
  { id, record: { kind, events = [] } }: SourceState,
  lots: readonly LotEntry[],
): Checked[] {
  const outages = events.filter((event) => event.kind === 'outage')
  return [
    sampledInOutage(lots, outages),
    classBesideCalcium(
      id,
      COAL_ASH.includes(kind) ? lots.map((lot) => ({ ...lot, class: lot.class ?? null })) : [],
    ),
    feedRising(
      id,
      kind === 'harvested-coal-ash'
        ? lots.map(({ id: lot, results, record }) => ({
            id: lot,
            results,
            feedMoisture: record.feed?.moisture?.value,
          }))
        : [],
    ),
  ]
}

/** Kinds whose class goes by calcium oxide. */
const COAL_ASH: readonly string[] = ['coal-fly-ash', 'coal-bottom-ash', 'harvested-coal-ash']

/** What the checks say of shipments from several lots, beside all bills: about the source, for no one lot shipped them. */
export function sourceAmongAll(
  { id, record: { producer } }: SourceState,
  shipments: readonly ShipmentEntry[],
  { bills }: Pick<AuditIndex, 'bills'>,
): Checked[] {
  const findings = sharedShipmentFindings({ id, producer, shipments }, bills)
  return (['shipment-mass', 'bill-twice'] as const).map((check) => ({
    check,
    looked: shipments.length,
    findings: findings.filter(({ reason }) => reason.code === check),
  }))
}

function reportsOf({ id, record: { reports }, asOf }: SourceState): Checked[] {
  if (reports === undefined) return []
  const { from, due, received = [] } = reports
  return reportFindings({ source: id, from, dueHours: due.value, received }, asOf)
}

function proficiencyOf(laboratories: Records['laboratories']): Map<string, ProficiencyRecord> {
  return new Map(
    [...laboratories].map(([id, { proficiency = [], ...laboratory }]) => [
      id,
      { proficiency, bridges: laboratory['cement-bridges'] ?? [] },
    ]),
  )
}

function laboratoryOf(
  laboratory: Laboratory | undefined,
  conditions: Records['conditions'],
): AuditedLaboratory | undefined {
  return (
    laboratory && {
      hasAccreditation: hasAccreditation(laboratory),
      covers: (work) => accreditationFor(laboratory, work, conditions) !== undefined,
      closed: laboratory['closed-days'] ?? [],
      equipment: laboratory.equipment ?? [],
    }
  )
}

/** A finding with the severity that the site gives its check. What blocks is a fault of a reading, and stays. */
export function asSiteWants(finding: Finding, { checks = {} }: Pick<Site, 'checks'>): Finding {
  const wanted = checks[finding.reason.code]
  if (wanted === undefined || finding.severity === 'blocks') return finding
  const isLowered = finding.severity === 'warning' && wanted === 'information'
  return { ...finding, severity: wanted, ...(isLowered ? { loweredFrom: 'warning' as const } : {}) }
}

/** The checks of an edition, or of a part of it, by what was looked at. */
export function runOf(checked: Iterable<Checked>, lots: readonly LotEntry[]): ChecksRun {
  const documents = lots.filter(({ revisions }) => 0 < revisions.length)
  const ofDocuments = ON_ISSUED.map((check): Checked => {
    const findings = documents.flatMap((lot) => lot.findings.filter(({ reason }) => reason.code === check))
    return { check, looked: documents.length, findings }
  })
  return checksRun([...checked, ...ofDocuments], lots.length)
}

/** Checks that hold a lot against its issued documents. */
const ON_ISSUED = (Object.keys(CHECKS) as CheckId[]).filter((check) => CHECKS[check].family === 'document')
