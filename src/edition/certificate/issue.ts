/** Issuing: a lot as judged on a date becomes a frozen document and a line in its record. */
import { isSurelyBefore, type Moment } from '../../core/measure/moment.ts'
import { revisionLine } from '../../records/edit/revision-line.ts'
import type { Records } from '../../records/load.ts'
import { certificateDocument, type Issue } from './certificate.ts'
import { canonicalJson, digestOf } from './digest.ts'
import type { CertificateDocument } from '../shape/document.ts'
import { judgeLot } from '../passes/judge-lot.ts'
import type { SourceState } from '../passes/source-state.ts'

/** What the person issuing says. */
export interface IssueRequest {
  readonly lot: string
  readonly date: Moment
  readonly by: string
  readonly function: string
  readonly reason: string
  readonly withdrawn: boolean
  readonly replacedBy?: string
}

export interface IssuedRevision {
  readonly document: CertificateDocument
  /** The bytes of content/issued/SOURCE/LOT/N.json, and what the digest is taken of. */
  readonly text: string
  readonly digest: string
  /** The line for `revisions:` in the lot's record. */
  readonly recordLine: string
}

/**
 * @param state the lot's source, computed at a date not earlier than the issue's
 * @param place the lot's place in it
 * @param earlier the revision that this one follows
 * @throws RangeError when the date lies before the earlier revision's
 */
export function issueRevision(
  {
    records,
    state,
    place,
    program,
  }: { records: Records; state: SourceState; place: number; program: string },
  request: IssueRequest,
  earlier: { readonly number: number; readonly date: Moment } | undefined,
): IssuedRevision {
  if (earlier !== undefined && isSurelyBefore(request.date, earlier.date))
    throw new RangeError(`issueRevision needs a date not before ${earlier.date}, got ${request.date}`)
  const issue: Issue = {
    revision: earlier === undefined ? 0 : earlier.number + 1,
    date: request.date,
    by: request.by,
    function: request.function,
    reason: request.reason,
    withdrawn: request.withdrawn,
    replacedBy: request.replacedBy ?? null,
    replaces: earlier === undefined ? null : { revision: earlier.number, date: earlier.date },
  }
  const document = certificateDocument(judgeLot(records, state, place, request.date), records, program, issue)
  const text = canonicalJson(document)
  const digest = digestOf(text)
  return { document, text, digest, recordLine: revisionLine(issue, digest) }
}
