/** One lot of the Edition: judged today, then held against what was issued. */
import type { Finding } from '../../core/checks/finding.ts'
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
  const { id, record, sampled, unmade, withdrawn } = computed
  const judged = judgeLot(records, state, place, state.asOf)
  const issued = (record.revisions ?? []).filter((revision) => revision.date <= state.asOf)
  const newest = issued.at(-1)
  const reading = newest === undefined ? undefined : readIssuedDocument(records, id, newest)
  const document = reading?.document ?? null
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
    state: document === null ? ('draft' as const) : document.state,
    shipments: shipmentsOf(id, record, state.asOf),
    revisions: revisions(issued, document),
    findings: [
      ...(reading?.finding === undefined ? [] : [reading.finding]),
      ...(document === null ? [] : laterChanges(records, state, place, { document, judged })),
    ],
    certificate: () =>
      newest === undefined
        ? certificateDocument(judged, records, program, null)
        : issuedDocument(records, id, newest),
    revisionDocument: (number: number) => issuedDocument(records, id, revisionOf(id, issued, number)),
  })
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
  state: SourceState,
  place: number,
  { document, judged }: { document: CertificateDocument; judged: JudgedLot },
): Finding[] {
  return issueFindings(
    document,
    knownRecord(judged.record, records.controls, document.asOf),
    judged.verdicts,
    () => judgeLot(records, state, place, document.asOf).verdicts,
  )
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
