/** One lot of the Edition: judged today, then held against what was issued. */
import type { Finding } from '../../core/checks/finding.ts'
import { defined } from '../../core/measure/defined.ts'
import { nameInSource, presentId } from '../../core/measure/lot-id.ts'
import { isBy, type Moment, readMoment } from '../../core/measure/moment.ts'
import { documentPath } from '../../records/files.ts'
import { type Withheld, WITHHELD, withRevealed } from '../../records/issued/private-part.ts'
import type { IssuedReader } from '../../records/issued/read-document.ts'
import type { Records } from '../../records/load.ts'
import type { Lot } from '../../records/schema/loaded-records.ts'
import { type JudgedLot, judgeLot } from '../passes/judge-lot.ts'
import { knownRecord } from '../passes/known-record.ts'
import { lotOverTime } from '../passes/lot-over-time.ts'
import { MADE_ANEW, type PartsOfLots } from '../passes/parts-of-lots.ts'
import { isSettled } from '../passes/rests-on.ts'
import { type SharedShipments, shipmentsOf } from '../passes/shipments.ts'
import type { SourceState } from '../passes/source-state.ts'
import { printedReadings } from '../printed/readings.ts'
import type { IssuedDocument } from '../shape/document.ts'
import type { Certificate, LotEntry, Revision } from '../shape/edition.ts'
import { byDateAndBill } from '../shape/shipment-order.ts'
import { isProvisional } from '../shape/due.ts'
import { certificateFacts } from './certificate-facts.ts'
import { changedValues, unstatedResults } from './changed-values.ts'
import { type DocumentContent, documentContent } from './document-content.ts'
import { issueFindings } from './compare-issued.ts'
import { issuedBy } from './issue.ts'
import { whenWithdrawn } from './when-withdrawn.ts'
import { withoutProjects } from './withheld.ts'

/** What every lot of an edition is made with. */
export interface LotsFrom {
  readonly records: Records
  readonly issued: IssuedReader
}

/** A source whose lots are made. */
export interface LotsOf {
  readonly state: SourceState
  /** What the source lists as drawn from one of several lots. */
  readonly shared: SharedShipments
  /** Gives what was made of a lot before; makes everything without it. */
  readonly known?: PartsOfLots['of']
}

/**
 * A lot as of its source's date.
 * @param place the lot's place in `state.lots`
 * @throws RangeError for a place that holds no lot
 */
export function lotEntry(
  from: LotsFrom,
  { state, shared, known = MADE_ANEW.of }: LotsOf,
  place: number,
): LotEntry {
  const computed = state.lots[place]
  if (computed === undefined)
    throw new RangeError(`lotEntry needs a place among ${state.lots.length} lots, got ${place}`)
  const { records } = from
  const judged = judgeLot(records, state, place, state.asOf)
  const { id, record, sampled, unmade, withdrawn } = computed
  const judgedOn = (asOf: Moment) => judgeLot(records, state, place, asOf)
  const stands =
    withdrawn === undefined ? judged : whenWithdrawn(withdrawn, newestDocument(from, judged), judgedOn)
  const shipments = [...shipmentsOf(id, record, state.asOf), ...shared.ofOne(id)].sort(byDateAndBill)
  const sharedShipments = shared.severalOf(id)
  const part = known(
    place,
    () => {
      const since = sinceIssue(from, judged, judgedOn)
      const left = shipments.length + sharedShipments.length === 0 ? 'not-shipped' : 'shipped'
      const overTime = lotOverTime({ records, state, place, stands }, judged, since.revisions, left)
      return { ...since, overTime }
    },
    ({ state: own }) => isSettled({ state: own, planned: judged.planned, verdicts: stands.verdicts }),
  )
  return {
    id,
    source: state.id,
    lot: nameInSource(id),
    number: judged.number,
    formerly: record.formerly ?? [],
    ...defined({ class: judged.class ?? undefined, withdrawn }),
    sampled,
    record,
    results: judged.results,
    unmade,
    planned: judged.planned,
    verdicts: stands.verdicts,
    ofProjects: stands.ofProjects,
    bestClass: stands.bestClass,
    shipments,
    sharedShipments,
    history: () => judged.history,
    ...part,
    ...certificatesOf(from, judged),
  }
}

type RevisionRecord = NonNullable<Lot['revisions']>[number]

/** What was issued by the date, and what today's records say of it. */
function sinceIssue(
  from: LotsFrom,
  judged: JudgedLot,
  judgedOn: (asOf: Moment) => JudgedLot,
): Pick<LotEntry, 'state' | 'revisions' | 'findings' | 'changedValues' | 'unstated'> {
  const issued = issuedLines(judged)
  const newest = issued.at(-1)
  const document = newestDocument(from, judged)
  const state = newest === undefined ? 'draft' : (document?.state ?? stateToday(judged, newest))
  return {
    state,
    revisions: revisions(from.records, issued, state),
    findings: document === null ? [] : laterChanges(from, judged, document, judgedOn),
    changedValues: document === null ? [] : changedValues(document, judged.results, from.records.site.units),
    unstated: document === null ? [] : unstatedResults(document, judged.results),
  }
}

function certificatesOf(
  from: LotsFrom,
  judged: JudgedLot,
): Pick<LotEntry, 'certificate' | 'revisionCertificate'> {
  const { id } = judged
  const issued = issuedLines(judged)
  const newest = issued.at(-1)
  return {
    certificate: (shown = WITHHELD) =>
      newest === undefined ? draft(from.records, judged, shown) : issuedCertificate(from, id, newest, shown),
    revisionCertificate: (number, shown = WITHHELD) =>
      issuedCertificate(from, id, revisionOf(id, issued, number), shown),
  }
}

/** Lines of revisions by the date that the lot is judged on. */
function issuedLines({ record, asOf }: JudgedLot): RevisionRecord[] {
  return (record.revisions ?? []).filter((revision) => isBy(revision.date, asOf))
}

/** null without one, and where it cannot be read. */
function newestDocument(from: LotsFrom, judged: JudgedLot): IssuedDocument | null {
  const newest = issuedLines(judged).at(-1)
  return newest === undefined ? null : documentOf(from, judged.id, newest)
}

/** Of a revision whose document cannot be read, which `check` reports as an error. */
function stateToday(judged: JudgedLot, { withdrawn }: RevisionRecord): LotEntry['state'] {
  if (withdrawn === 'yes') return 'withdrawn'
  return isProvisional(judged) ? 'provisional' : 'complete'
}

function revisionOf(id: string, issued: readonly RevisionRecord[], number: number): RevisionRecord {
  const revision = issued.find((candidate) => candidate.number === number)
  if (revision === undefined)
    throw new RangeError(`revisionCertificate needs a revision of ${id}, got ${number}`)
  return revision
}

function documentOf(
  { records, issued }: LotsFrom,
  id: string,
  { number, digest }: Pick<RevisionRecord, 'number' | 'digest'>,
): IssuedDocument | null {
  if (records.unsoundDocuments.has(documentPath(id, number))) return null
  const stored = issued.document(id, number)
  // Only the document of the recorded digest is of the form that its program wrote.
  return stored?.digest === digest ? (stored.document as IssuedDocument) : null
}

function issuedCertificate(
  from: LotsFrom,
  id: string,
  revision: RevisionRecord,
  shown: readonly Withheld[],
): Certificate {
  const document = documentOf(from, id, revision)
  if (document === null)
    throw new RangeError(`issuedCertificate needs a sound document of ${id}, got none for ${revision.number}`)
  const part = shown.length === 0 ? null : from.issued.privatePart(document.private)
  const whole = part === null ? document : withRevealed(document, part, shown)
  return certificate(whole, { revision: revision.number, digest: revision.digest })
}

/** A document's content as its page draws it. */
function certificate(
  { shared, lot, controls, printed, data }: DocumentContent,
  identity: Pick<Certificate, 'revision' | 'digest'>,
): Certificate {
  const { words } = shared.printed
  return {
    ...identity,
    shared: shared.printed,
    lot: lot.printed,
    printed,
    readings: printedReadings(data.tests, controls, words.readings),
  }
}

function draft(records: Records, judged: JudgedLot, shown: readonly Withheld[]): Certificate {
  const withholding = new Set(WITHHELD.filter((group) => !shown.includes(group)))
  const stating = { records, issue: null, withholding, isIssued: issuedBy(records, judged.asOf) }
  const stated = withoutProjects(judged, records.site)
  const content = documentContent(stated, certificateFacts(stated, stating), stating)
  return certificate(content, { revision: null, digest: null })
}

/** Compared as of the document's own date, so that a later reading or a passed due date is no alteration. */
function laterChanges(
  { records, issued }: LotsFrom,
  { record, verdicts }: JudgedLot,
  document: IssuedDocument,
  judgedOn: (asOf: Moment) => JudgedLot,
): Finding[] {
  const asOf = readMoment(document.issued)
  const part = issued.privatePart(document.private)
  const whole = part === null ? document : withRevealed(document, part, WITHHELD)
  const known = knownRecord(record, records.controls, asOf)
  return issueFindings(whole, known, verdicts, () => judgedOn(asOf).verdicts)
}

function revisions(
  { lots }: Pick<Records, 'lots'>,
  issued: readonly RevisionRecord[],
  newest: LotEntry['state'],
): Revision[] {
  const renamed = (id: string) => presentId(lots, id) ?? id
  return issued.map((revision, index) =>
    defined({
      number: revision.number,
      date: revision.date,
      by: revision.by,
      function: revision.function,
      reason: revision.reason,
      digest: revision.digest,
      state: index < issued.length - 1 || newest === 'draft' ? ('superseded' as const) : newest,
      replacedBy: revision['replaced-by'] && renamed(revision['replaced-by']),
    }),
  )
}
