/** Records to Edition: every lot computed once, then judged, then held against what was issued. */
import type { Finding } from '../core/checks/finding.ts'
import type { Verdict } from '../core/criteria/outcome.ts'
import type { Records } from '../records/load.ts'
import { latestHappening } from './passes/as-of.ts'
import { certificateDocument, type JudgedLot } from './certificate/certificate.ts'
import { issueFindings } from './certificate/compare-issued.ts'
import { controlEntries } from './passes/control-entries.ts'
import type { CertificateDocument } from './shape/document.ts'
import type {
  CertificateState,
  Edition,
  LotEntry,
  Revision,
  ShipmentEntry,
  SourceEntry,
} from './shape/edition.ts'
import { readIssuedDocument } from './certificate/issued.ts'
import { knownRecord } from './passes/known-record.ts'
import { sourceSeries } from './passes/series.ts'
import { judgeLot, type SourceState, sourceStates } from './passes/source-state.ts'

export interface EditionOptions {
  /** Calendar date; the site's, else the latest happening, without it. */
  readonly asOf?: string
  /** Origin and base path in place of the site's. */
  readonly address?: string
  readonly program: string
}

/** The date an edition of these records is read on; today's clock never enters. */
export function asOfDate(records: Records, option?: string): string {
  return option ?? records.site['as-of'] ?? latestHappening(records.lots.values()) ?? '1970-01-01'
}

/** Origin and base path of an address such as "https://example.org/pozzolans/". */
export function splitAddress(address: string | undefined): Edition['address'] {
  if (address === undefined) return { origin: null, base: '/' }
  const url = new URL(address)
  return { origin: url.origin, base: url.pathname.endsWith('/') ? url.pathname : `${url.pathname}/` }
}

/** The whole edition with everything in it; `forAudience` takes out what is not published. */
export function computeEdition(records: Records, options: EditionOptions): Edition {
  const asOf = asOfDate(records, options.asOf)
  const controls = controlEntries(records, asOf)
  const sources = new Map(
    [...sourceStates(records, asOf, controls)].map(([id, state]) => [
      id,
      sourceEntry(records, state, options.program),
    ]),
  )
  const lots = new Map(
    [...sources.values()].flatMap((source) => source.lots.map((lot) => [lot.id, lot] as const)),
  )
  return {
    asOf,
    site: records.site,
    address: splitAddress(options.address ?? records.site.address),
    audience: 'internal',
    producers: records.producers,
    laboratories: records.laboratories,
    conditions: records.conditions,
    announcedConditions: records.announcedConditions,
    controls,
    criteria: records.criteria,
    sources,
    lots,
    shipments: [...lots.values()].flatMap((lot) => lot.shipments).sort(byDateAndBill),
    methods: records.methods,
    program: options.program,
  }
}

function sourceEntry(records: Records, state: SourceState, program: string): SourceEntry {
  const lots = state.lots.map((_, place) => lotEntry(records, state, place, program))
  const criteria = [...new Set(lots.flatMap((lot) => lot.verdicts.map((verdict) => verdict.criterion)))]
  return {
    id: state.id,
    record: state.record,
    lots,
    series: sourceSeries(state),
    criteria: governingFirst(criteria, lots),
    background: state.background,
    restarts: state.restarts,
    unpublished: 0,
    findings: [],
  }
}

/** In the order of the newest lot's criteria, then those that only earlier lots were judged under. */
function governingFirst(criteria: readonly string[], lots: readonly LotEntry[]): string[] {
  const newest = lots.at(-1)?.verdicts.map((verdict) => verdict.criterion) ?? []
  return [...newest, ...criteria.filter((id) => !newest.includes(id))]
}

function lotEntry(records: Records, state: SourceState, place: number, program: string): LotEntry {
  const { asOf } = state
  const judged = judgeLot(records, state, place, asOf)
  const issued = (judged.record.revisions ?? []).filter((revision) => revision.date <= asOf)
  const newest = issued.at(-1)
  const reading = newest === undefined ? undefined : readIssuedDocument(records, judged.id, newest)
  const document = reading?.document ?? null
  const findings: Finding[] = [
    ...(reading?.finding === undefined ? [] : [reading.finding]),
    ...(document === null ? [] : laterChanges(records, state, place, { document, today: judged.verdicts })),
  ]
  const sourceId = state.id
  return {
    id: judged.id,
    source: sourceId,
    lot: judged.id.slice(sourceId.length + 1),
    number: judged.number,
    formerly: judged.record.formerly ?? [],
    ...(judged.class === null ? {} : { class: judged.class }),
    sampled: state.lots[place]?.sampled ?? '',
    record: judged.record,
    results: judged.results,
    unmade: state.lots[place]?.unmade ?? [],
    planned: judged.planned,
    verdicts: judged.verdicts,
    bestClass: judged.bestClass,
    ...withdrawal(state.lots[place]?.withdrawn),
    state: certificateState(document),
    shipments: shipmentsOf(judged.id, judged.record, asOf),
    revisions: revisions(issued, document),
    findings,
    certificate: () =>
      newest === undefined ? draft(records, judged, program) : issuedDocument(records, judged.id, newest),
    revisionDocument: (number) => {
      const revision = issued.find((candidate) => candidate.number === number)
      if (revision === undefined)
        throw new RangeError(`revisionDocument needs a revision of ${judged.id}, got ${number}`)
      return issuedDocument(records, judged.id, revision)
    },
  }
}

function withdrawal(withdrawn: string | undefined): Pick<LotEntry, 'withdrawn'> {
  return withdrawn === undefined ? {} : { withdrawn }
}

function draft(records: Records, judged: JudgedLot, program: string): CertificateDocument {
  return certificateDocument(judged, records, program, null)
}

function issuedDocument(
  records: Records,
  id: string,
  revision: { number: number; digest: string },
): CertificateDocument {
  const { document } = readIssuedDocument(records, id, revision)
  if (document === null)
    throw new RangeError(
      `issuedDocument needs a readable document, got none for ${id} revision ${revision.number}`,
    )
  return document
}

/** Compared as of the document's own date, so that a later reading or a passed due date is no alteration. */
function laterChanges(
  records: Records,
  state: SourceState,
  place: number,
  { document, today }: { document: CertificateDocument; today: readonly Verdict[] },
): Finding[] {
  const record = state.lots[place]?.record
  if (record === undefined) return []
  return issueFindings(
    document,
    knownRecord(record, records.controls, document.asOf),
    today,
    () => judgeLot(records, state, place, document.asOf).verdicts,
  )
}

function certificateState(document: CertificateDocument | null): CertificateState {
  return document === null ? 'draft' : document.state
}

type RevisionRecord = NonNullable<LotEntry['record']['revisions']>[number]

function revisions(issued: readonly RevisionRecord[], newest: CertificateDocument | null): Revision[] {
  return issued.map((revision, index) => ({
    number: revision.number,
    date: revision.date,
    by: revision.by,
    function: revision.function,
    reason: revision.reason,
    digest: revision.digest,
    state:
      index < issued.length - 1
        ? 'superseded'
        : newest === null || newest.state === 'draft'
          ? 'complete'
          : newest.state,
    ...(revision['replaced-by'] === undefined ? {} : { replacedBy: revision['replaced-by'] }),
  }))
}

/** Shipments of one lot by the as-of date, in order of date. */
function shipmentsOf(id: string, record: LotEntry['record'], asOf: string): ShipmentEntry[] {
  return (record.shipments ?? [])
    .filter((shipment) => shipment.date <= asOf)
    .map((shipment) => ({
      bill: shipment.bill,
      date: shipment.date,
      massT: shipment.mass.value,
      massWritten: shipment.mass.written,
      lot: id,
      ...(shipment.to === undefined ? {} : { consignee: shipment.to }),
      ...(shipment.project === undefined ? {} : { project: shipment.project }),
      ...(shipment.seal === undefined ? {} : { seal: shipment.seal }),
    }))
    .sort(byDateAndBill)
}

function byDateAndBill(a: ShipmentEntry, b: ShipmentEntry): number {
  return a.date === b.date ? (a.bill < b.bill ? -1 : 1) : a.date < b.date ? -1 : 1
}
