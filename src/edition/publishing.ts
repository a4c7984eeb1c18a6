/**
 * What reaches the site. `publish:` names what may; everything else is taken out of the Edition before a page
 * or a writer
 * sees it, so that nothing downstream can forget to.
 */
import { defined } from '../core/measure/defined.ts'
import type { Lot } from '../records/schema/loaded-records.ts'
import type { CertificateDocument } from './shape/document.ts'
import type { Edition, ListedLot, LotEntry, ShipmentEntry, SourceEntry } from './shape/edition.ts'
import { lotsBySource } from './shape/listing.ts'

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
  const lots = publicRows(edition, publish)
  return {
    ...edition,
    audience: 'public',
    lots,
    lotsOf: lotsBySource(lots),
    lot: (id) => publicLot(edition.lot(published(lots, id)), publish),
    sources: new Map(
      [...edition.sources].map(([id, source]) => [id, withFindingCount(source, publish)] as const),
    ),
    source: (id) => publicSource(edition.source(id), edition.lotsOf(id), lots, publish),
    producers: publicProducers(edition.producers, publish),
    shipments: edition.shipments
      .filter((shipment) => lots.has(shipment.lot))
      .map((shipment) => publicShipment(shipment, publish)),
  }
}

/** Rows of the lots that are shown: drafts only where the site wants them. */
function publicRows({ lots, site }: Edition, publish: Publish): Map<string, ListedLot> {
  const shown = [...lots].filter(([, lot]) => site.drafts === 'yes' || lot.state !== 'draft')
  return new Map(shown.map(([id, lot]) => [id, withFindingCount(lot, publish)]))
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

function publicSource(
  source: SourceEntry,
  onRecord: readonly ListedLot[],
  shown: Edition['lots'],
  publish: Publish,
): SourceEntry {
  return {
    ...source,
    unpublished: onRecord.filter((lot) => !shown.has(lot.id)).length,
    findings: publish.has('findings') ? source.findings : [],
    series: source.series
      .map((series) => ({ ...series, points: series.points.filter((point) => shown.has(point.lot)) }))
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
    ...defined({
      consignee: publish.has('consignee') ? consignee : undefined,
      project: publish.has('project') ? project : undefined,
      seal: publish.has('seals') ? seal : undefined,
    }),
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
