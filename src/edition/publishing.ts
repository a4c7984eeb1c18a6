/**
 * What reaches the site. `publish:` names what may; everything else is taken out of the Edition before a page
 * or a writer
 * sees it, so that nothing downstream can forget to.
 */
import type { SourceAgency } from '../core/agency/source-agency.ts'
import { defined } from '../core/measure/defined.ts'
import { kept } from '../core/measure/kept.ts'
import { sourceOf } from '../core/measure/lot-id.ts'
import { once } from '../core/measure/once.ts'
import type { BestClass } from '../core/judging/verdict.ts'
import { digestOf } from '../records/issued/digest.ts'
import { WITHHELD } from '../records/issued/private-part.ts'
import { NOT_PUBLISHED, UNISSUED_LOT } from '../words/withheld.ts'
import { controlsUsed, publishedBy, rowsShown } from './certificate/shown-of-source.ts'
import { type IsIssued, withoutDrafts } from './certificate/withheld.ts'
import type { Edition, ListedLot, LotEntry, Revision, ShipmentEntry, SourceEntry } from './shape/edition.ts'
import { type Publish, publicRecord, publicSourceRecord } from './certificate/published-record.ts'
import {
  type Hidden,
  publicAudit,
  publicFindings,
  publicLotFindings,
  type Withholding,
} from './shape/public-findings.ts'
import type { LotHistory } from './shape/lot-history.ts'
import { publicLaboratoryHistory, publicSourceHistory } from './shape/public-history.ts'
import { lotsBySource } from './shape/listing.ts'
import { lotsNamed } from './shape/lots-named.ts'
import { whileUsed } from './shape/while-used.ts'

/**
 * The Edition for an audience: the public one without what site.yaml does not publish, the internal one
 * whole.
 */
export function forAudience(edition: Edition, audience: Edition['audience']): Edition {
  if (audience === 'internal') return edition
  const publish = publishedBy(edition)
  const lots = publicRows(edition)
  const controls = publicControls(edition)
  const rowsOf = lotsBySource(lots)
  const hidden: Hidden = new Set([...edition.lots.keys()].filter((id) => !lots.has(id)))
  const names = hiddenNames(edition, hidden)
  return {
    ...edition,
    audience: 'public',
    ofSource: (source, name, make, beside = () => '') =>
      edition.ofSource(
        source,
        `${name}, as shown`,
        make,
        () => `${names.ofSource(source).join()} ${beside()}`,
      ),
    restsOn: publicDigests(edition, names, { controls, hidden }),
    lots,
    lotsOf: rowsOf,
    lot: whileUsed((id) => publicLot(edition.lot(published(lots, id)), lots, { publish, hidden })),
    sources: new Map(
      [...edition.sources].map(([id, source]) => {
        const criteria = publicCriteria(source.criteria, rowsOf(id))
        return [id, withFindingCount({ ...source, criteria }, publish)] as const
      }),
    ),
    laboratoryHistory: (id) =>
      publicLaboratoryHistory(edition.laboratoryHistory(id), (batch) => controls.has(batch)),
    laboratoryFindings: (id) => publicFindings(edition.laboratoryFindings(id), { publish, hidden }),
    source: whileUsed((id) => publicSource(edition, id, lots, { publish, hidden })),
    producers: publicProducers(edition.producers, publish),
    controls,
    shipmentsOf: whileUsed((source) => publicShipments(edition.shipmentsOf(source), lots, publish)),
  }
}

function publicShipments(
  shipments: readonly ShipmentEntry[],
  lots: Edition['lots'],
  publish: Publish,
): readonly ShipmentEntry[] {
  return shipments
    .filter((shipment) => shipment.lots.some((id) => lots.has(id)))
    .map((shipment) => publicShipment(shipment, lots, publish))
}

/** Rows of the lots that are shown. */
function publicRows(edition: Edition): Map<string, ListedLot> {
  const rows = [...edition.sources.keys()].flatMap((source) => rowsShown(edition, source))
  return new Map(rows.map((row) => [row.id, row]))
}

/** Lots that are not shown and that a source or one of its lots names: what is shown of it depends on them. */
interface HiddenNames {
  readonly ofSource: (source: string) => readonly string[]
  readonly ofLot: (lot: string) => readonly string[]
}

function hiddenNames(edition: Edition, hidden: Hidden): HiddenNames {
  const named = new Map<
    string,
    { readonly bySource: readonly string[]; readonly byLot: ReadonlyMap<string, readonly string[]> }
  >()
  const isHidden = (id: string) => hidden.has(id)
  const namedBy = (source: string) =>
    kept(named, source, () => {
      const { bySource, byLot } = lotsNamed(edition, source)
      return { bySource, byLot: new Map(byLot) }
    })
  return {
    ofSource: (source) => namedBy(source).bySource.filter(isHidden),
    ofLot: (lot) => (namedBy(sourceOf(lot)).byLot.get(lot) ?? []).filter(isHidden),
  }
}

/** Digests of parts as they are shown; which of a source's own lots are hidden its records say. */
function publicDigests(
  edition: Edition,
  names: HiddenNames,
  { controls, hidden }: { readonly controls: Edition['controls']; readonly hidden: Hidden },
): Edition['restsOn'] {
  const beside = {
    lot: names.ofLot,
    source: names.ofSource,
    laboratory: () => [...controls.keys(), ...hidden],
    study: () => [],
    control: () => [],
  }
  return (part) => {
    const digest = edition.restsOn(part)
    const [kind, id = ''] = part.split(' ') as [keyof typeof beside, string]
    return digest === null ? null : digestOf(JSON.stringify([digest, beside[kind](id)]))
  }
}

/** Sets that a source's shown lots are judged under, in the order that they have. */
function publicCriteria(criteria: readonly string[], rows: readonly ListedLot[]): readonly string[] {
  const judged = new Set(rows.flatMap(({ outcomes }) => outcomes.map(({ criterion }) => criterion)))
  return criteria.filter((id) => judged.has(id))
}

/** A lot that is left out cannot be asked for either. */
function published(lots: Edition['lots'], id: string): string {
  if (!lots.has(id)) throw new RangeError(`lot needs the id of a published lot, got ${id}`)
  return id
}

function withFindingCount<T extends { readonly findingCount: number }>(row: T, publish: Publish): T {
  return publish.has('findings') ? row : { ...row, findingCount: 0 }
}

function publicProducers(producers: Edition['producers'], publish: Publish): Edition['producers'] {
  if (publish.has('persons')) return producers
  return new Map([...producers].map(([id, { signatories: _, ...producer }]) => [id, producer]))
}

/** A control that only what is not shown was tested against is not shown either. */
function publicControls(edition: Edition): Edition['controls'] {
  const used = [...edition.sources.keys()].map((source) => controlsUsed(edition, source))
  const ofShown = new Set(used.flatMap((one) => one.shown))
  const ofAny = new Set(used.flatMap(({ any }) => any))
  return new Map(
    [...edition.controls]
      .filter(([id]) => ofShown.has(id) || !ofAny.has(id))
      .map(
        ([
          id,
          {
            record: { imported: _, ...record },
            ...entry
          },
        ]) => [id, { ...entry, record }],
      ),
  )
}

function publicSource(
  edition: Edition,
  id: string,
  shown: Edition['lots'],
  withhold: Withholding,
): SourceEntry {
  const [source, onRecord] = [edition.source(id), edition.lotsOf(id)]
  const lots = onRecord.filter((lot) => shown.has(lot.id)).map((lot) => edition.lot(lot.id))
  return {
    ...source,
    criteria: publicCriteria(
      source.criteria,
      onRecord.flatMap(({ id }) => shown.get(id) ?? []),
    ),
    record: publicSourceRecord(source.record, source.id, shown, withhold.publish),
    agency: (isShown = () => true) =>
      publicAgency(source, (id) => shown.has(id) && isShown(id), withhold.publish),
    unpublished: onRecord.filter((lot) => !shown.has(lot.id)).length,
    ...publicAudit(source, lots, withhold),
    atLimits: once(() =>
      onRecord.every(({ id }) => shown.has(id)) ? source.atLimits() : source.atLimits((id) => shown.has(id)),
    ),
    history: once(() => publicSourceHistory(source.history(), (id) => shown.has(id))),
    series: source.series
      .map((series) => ({ ...series, points: series.points.filter((point) => shown.has(point.lot)) }))
      .filter((series) => series.points.length > 0),
  }
}

/** Lots that are not shown count on neither side, so that none of their values can be worked out. */
function publicAgency(
  { agency }: SourceEntry,
  isShown: (lot: string) => boolean,
  publish: Publish,
): SourceAgency | null {
  const found = publish.has('verification') ? agency(isShown) : null
  if (found === null || publish.has('persons')) return found
  return { ...found, status: found.status.map(({ sampler: _, ...period }) => period) }
}

function publicLot(lot: LotEntry, shown: Edition['lots'], withhold: Withholding): LotEntry {
  const { publish } = withhold
  const groups = WITHHELD.filter((group) => publish.has(group))
  const isShown = (id: string) => shown.has(id)
  return {
    ...lot,
    record: publicRecord(lot.record, publish),
    results: publish.has('verification')
      ? lot.results
      : lot.results.filter((result) => result.role !== 'verification'),
    ...publicVerdicts(lot, isShown, publish),
    bestClass: (criterion) => publicBestClass(lot.bestClass(criterion), isShown),
    findings: publicLotFindings(lot, withhold),
    shipments: lot.shipments.map((shipment) => publicShipment(shipment, shown, publish)),
    sharedShipments: lot.sharedShipments.map((shipment) => publicShipment(shipment, shown, publish)),
    revisions: lot.revisions.map((revision) => publicRevision(revision, shown, publish)),
    history: () => publicHistory(lot.history(), isShown),
    certificate: () => lot.certificate(groups),
    revisionCertificate: (number) => lot.revisionCertificate(number, groups),
  }
}

function publicVerdicts(
  { verdicts, ofProjects }: LotEntry,
  isShown: IsIssued,
  publish: Publish,
): Pick<LotEntry, 'verdicts' | 'ofProjects'> {
  const kept = publish.has('project') ? [] : ofProjects
  return {
    verdicts: verdicts
      .filter(({ criterion }) => !kept.includes(criterion))
      .map((verdict) => withoutDrafts(verdict, isShown)),
    ofProjects: ofProjects.filter((id) => !kept.includes(id)),
  }
}

function publicBestClass(found: BestClass | null, isShown: IsIssued): BestClass | null {
  if (found === null || found.next === null) return found
  return { ...found, next: { ...found.next, verdict: withoutDrafts(found.next.verdict, isShown) } }
}

/** The value of a lot that is not shown counts and stands bare. */
function publicHistory(history: LotHistory, isShown: IsIssued): LotHistory {
  return history.map((series) => ({
    ...series,
    points: series.points.map((point) =>
      point.named === null || isShown(point.named.lot) ? point : { ...point, named: null },
    ),
  }))
}

function publicRevision(
  { replacedBy, ...revision }: Revision,
  shown: Edition['lots'],
  publish: Publish,
): Revision {
  return {
    ...revision,
    by: publish.has('persons') ? revision.by : NOT_PUBLISHED.name,
    ...defined({
      replacedBy: replacedBy === undefined || shown.has(replacedBy) ? replacedBy : UNISSUED_LOT,
    }),
  }
}

/** A possible lot that is not shown is not named; that there is one stays, else another would pass for the only one. */
function publicShipment(
  { consignee, project, purchaseOrder, seal, lots, ...shipment }: ShipmentEntry,
  shown: Edition['lots'],
  publish: Publish,
): ShipmentEntry {
  const named = lots.filter((id) => shown.has(id))
  return {
    ...shipment,
    lots: named,
    ...defined({
      unshown: named.length < lots.length ? (true as const) : shipment.unshown,
      consignee: publish.has('consignee') ? consignee : undefined,
      project: publish.has('project') ? project : undefined,
      purchaseOrder: publish.has('purchase-order') ? purchaseOrder : undefined,
      seal: publish.has('seals') ? seal : undefined,
    }),
  }
}
