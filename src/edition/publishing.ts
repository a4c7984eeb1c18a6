/**
 * What reaches the site. `publish:` names what may; everything else is taken out of the Edition before a page
 * or a writer
 * sees it, so that nothing downstream can forget to.
 */
import type { Lot } from '../records/schema/loaded-records.ts'
import type { CertificateDocument } from './shape/document.ts'
import type { Edition, LotEntry, ShipmentEntry, SourceEntry } from './shape/edition.ts'

type Publish = ReadonlySet<string>

/** Stands where a name is not published. */
export const NOT_PUBLISHED = 'name not published'

/**
 * The Edition for an audience: the public one without what site.yaml does not publish, the internal one
 * whole.
 */
export function forAudience(edition: Edition, audience: Edition['audience']): Edition {
  if (audience === 'internal') return edition
  const publish: Publish = new Set(edition.site.publish ?? [])
  const withDrafts = edition.site.drafts === 'yes'
  const lots = new Map(
    [...edition.lots.values()]
      .filter((lot) => withDrafts || lot.state !== 'draft')
      .map((lot) => [lot.id, publicLot(lot, publish)] as const),
  )
  return {
    ...edition,
    audience: 'public',
    lots,
    sources: new Map([...edition.sources].map(([id, source]) => [id, publicSource(source, lots, publish)])),
    producers: publish.has('persons')
      ? edition.producers
      : new Map([...edition.producers].map(([id, { signatories: _, ...producer }]) => [id, producer])),
    shipments: edition.shipments
      .filter((shipment) => lots.has(shipment.lot))
      .map((shipment) => publicShipment(shipment, publish)),
  }
}

function publicSource(
  source: SourceEntry,
  lots: ReadonlyMap<string, LotEntry>,
  publish: Publish,
): SourceEntry {
  const shown = source.lots.map((lot) => lots.get(lot.id)).filter((lot) => lot !== undefined)
  const visible = new Set(shown.map((lot) => lot.id))
  return {
    ...source,
    lots: shown,
    unpublished: source.lots.length - shown.length,
    findings: publish.has('findings') ? source.findings : [],
    series: source.series
      .map((series) => ({ ...series, points: series.points.filter((point) => visible.has(point.lot)) }))
      .filter((series) => series.points.length > 0),
  }
}

function publicLot(lot: LotEntry, publish: Publish): LotEntry {
  return {
    ...lot,
    record: publicRecord(lot.record, publish),
    results: publish.has('verification')
      ? lot.results
      : lot.results.filter((result) => result.role !== 'verification'),
    findings: publish.has('findings') ? lot.findings : [],
    shipments: lot.shipments.map((shipment) => publicShipment(shipment, publish)),
    revisions: publish.has('persons')
      ? lot.revisions
      : lot.revisions.map((revision) => ({ ...revision, by: NOT_PUBLISHED })),
    certificate: () => publicDocument(lot.certificate(), publish),
    revisionDocument: (number) => publicDocument(lot.revisionDocument(number), publish),
  }
}

function publicShipment(
  { consignee, project, seal, ...shipment }: ShipmentEntry,
  publish: Publish,
): ShipmentEntry {
  return {
    ...shipment,
    ...(publish.has('consignee') && consignee !== undefined ? { consignee } : {}),
    ...(publish.has('project') && project !== undefined ? { project } : {}),
    ...(publish.has('seals') && seal !== undefined ? { seal } : {}),
  }
}

function publicDocument(document: CertificateDocument, publish: Publish): CertificateDocument {
  const persons = publish.has('persons')
  return {
    ...document,
    record: null,
    by: document.by === null || persons ? document.by : { ...document.by, name: NOT_PUBLISHED },
    lot: publish.has('seals') ? document.lot : { ...document.lot, seals: [] },
    samples: persons
      ? document.samples
      : document.samples.map((sample) => ({ ...sample, by: sample.by === null ? null : NOT_PUBLISHED })),
  }
}

function publicRecord(record: Lot, publish: Publish): Lot {
  const { verification, seals, shipments, revisions, ...rest } = record
  const persons = publish.has('persons')
  return {
    ...rest,
    samples: record.samples.map(({ by, seal, ...sample }) => ({
      ...sample,
      ...(persons && by !== undefined ? { by } : {}),
      ...(publish.has('seals') && seal !== undefined ? { seal } : {}),
    })),
    ...(seals !== undefined && publish.has('seals') ? { seals } : {}),
    ...(verification !== undefined && publish.has('verification') ? { verification } : {}),
    ...(revisions === undefined
      ? {}
      : {
          revisions: persons ? revisions : revisions.map((revision) => ({ ...revision, by: NOT_PUBLISHED })),
        }),
    ...(shipments === undefined
      ? {}
      : {
          shipments: shipments.map(({ to, project, seal, vehicle: _, ...shipment }) => ({
            ...shipment,
            ...(publish.has('consignee') && to !== undefined ? { to } : {}),
            ...(publish.has('project') && project !== undefined ? { project } : {}),
            ...(publish.has('seals') && seal !== undefined ? { seal } : {}),
          })),
        }),
  }
}
