/** One lot of the Edition: judged today, then held against what was issued. */
import { type Moment, isBy, readMoment } from '../../core/measure/moment.ts'
import type { Finding } from '../../core/checks/finding.ts'
import type { Verdict } from '../../core/criteria/verdict.ts'
import { defined } from '../../core/measure/defined.ts'
import { nameInSource } from '../../core/measure/lot-id.ts'
import type { Records } from '../../records/load.ts'
import type { Lot } from '../../records/schema/loaded-records.ts'
import { type JudgedLot, judgeLot } from '../passes/judge-lot.ts'
import { knownRecord } from '../passes/known-record.ts'
import { shipmentsOf } from '../passes/shipments.ts'
import type { SourceState } from '../passes/source-state.ts'
import type { CertificateDocument } from '../shape/document.ts'
import type { LotEntry, Revision } from '../shape/edition.ts'
import { certificateDocument } from './certificate.ts'
import { issueFindings } from './compare-issued.ts'
import { readIssuedDocument } from './issued.ts'

/**
 * A lot as of its source's date.
 * @param state the lot's source
 * @param place the lot's place in `state.lots`
 * @param program name and version, for a draft's document
 * @throws RangeError for a place that holds no lot
 */
export function lotEntry(records: Records, state: SourceState, place: number, program: string): LotEntry {
  const computed = state.lots[place]
  if (computed === undefined)
    throw new RangeError(`lotEntry needs a place among ${state.lots.length} lots, got ${place}`)
  const judged = judgeLot(records, state, place, state.asOf)
  const { id, record, sampled, unmade, withdrawn } = computed
  return defined({
    id,
    source: state.id,
    lot: nameInSource(id),
    number: judged.number,
    formerly: record.formerly ?? [],
    class: judged.class ?? undefined,
    sampled,
    record,
    results: judged.results,
    unmade,
    planned: judged.planned,
    verdicts: judged.verdicts,
    bestClass: judged.bestClass,
    withdrawn,
    shipments: shipmentsOf(id, record, state.asOf),
    ...issuedPart(records, judged, program, (asOf) => judgeLot(records, state, place, asOf).verdicts),
  })
}

/** What was issued by the date, and what today's records say of it. */
function issuedPart(
  records: Records,
  judged: JudgedLot,
  program: string,
  judgedOn: (asOf: Moment) => readonly Verdict[],
): Pick<LotEntry, 'state' | 'revisions' | 'findings' | 'certificate' | 'revisionDocument'> {
  const { id, record } = judged
  const issued = (record.revisions ?? []).filter((revision) => isBy(revision.date, judged.asOf))
  const newest = issued.at(-1)
  const reading = newest === undefined ? undefined : readIssuedDocument(records, id, newest)
  const document = reading?.document ?? null
  const damage = reading?.finding === undefined ? [] : [reading.finding]
  return {
    state: document === null ? 'draft' : document.state,
    revisions: revisions(issued, document),
    findings: document === null ? damage : [...damage, ...laterChanges(records, judged, document, judgedOn)],
    certificate: () =>
      newest === undefined
        ? certificateDocument(judged, records, program, null)
        : issuedDocument(records, id, newest),
    revisionDocument: (number) => issuedDocument(records, id, revisionOf(id, issued, number)),
  }
}

type RevisionRecord = NonNullable<Lot['revisions']>[number]

function revisionOf(id: string, issued: readonly RevisionRecord[], number: number): RevisionRecord {
  const revision = issued.find((candidate) => candidate.number === number)
  if (revision === undefined)
    throw new RangeError(`revisionDocument needs a revision of ${id}, got ${number}`)
  return revision
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
  { record, verdicts }: JudgedLot,
  document: CertificateDocument,
  judgedOn: (asOf: Moment) => readonly Verdict[],
): Finding[] {
  const asOf = readMoment(document.asOf)
  const known = knownRecord(record, records.controls, asOf)
  return issueFindings(document, known, verdicts, () => judgedOn(asOf))
}

function revisions(issued: readonly RevisionRecord[], newest: CertificateDocument | null): Revision[] {
  return issued.map((revision, index) =>
    defined({
      number: revision.number,
      date: revision.date,
      by: revision.by,
      function: revision.function,
      reason: revision.reason,
      digest: revision.digest,
      state: index < issued.length - 1 ? ('superseded' as const) : stateOfNewest(newest),
      replacedBy: revision['replaced-by'],
    }),
  )
}

/** A document that cannot be read is a finding; until it is mended, its revision counts as complete. */
function stateOfNewest(document: CertificateDocument | null): Revision['state'] {
  return document === null || document.state === 'draft' ? 'complete' : document.state
}
