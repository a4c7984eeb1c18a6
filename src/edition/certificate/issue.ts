/** Issuing: a lot as judged on a date becomes a document, the parts it shares, and a line in its record. */
import { defined } from '../../core/measure/defined.ts'
import { isSurelyBefore, isBy, type Moment } from '../../core/measure/moment.ts'
import { revisionLine } from '../../records/edit/revision-line.ts'
import { canonicalJson, digestOf } from '../../records/issued/digest.ts'
import { withoutParts } from '../../records/issued/parts.ts'
import { type PrivatePart, revealedIn, type Withheld, WITHHELD } from '../../records/issued/private-part.ts'
import type { Records } from '../../records/load.ts'
import { type JudgedLot, judgeLot } from '../passes/judge-lot.ts'
import type { SourceState } from '../passes/source-state.ts'
import type { IssuedDocument } from '../shape/document.ts'
import { certificateFacts, type Issue } from './certificate-facts.ts'
import { documentContent } from './document-content.ts'
import { concernedGroups, withoutProjects } from './withheld.ts'

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

/** A revision as its files hold it. */
export interface IssuedRevision {
  readonly document: IssuedDocument
  /** The bytes of content/issued/SOURCE/LOT/N.json, and what the digest is taken of. */
  readonly text: string
  readonly digest: string
  /** Files of content/issued/parts/, by digest: those that documents share, and the private one. */
  readonly parts: ReadonlyMap<string, string>
  /** The line for `revisions:` in the lot's record. */
  readonly recordLine: string
}

/** The revision that another one follows. */
export interface EarlierRevision {
  readonly number: number
  readonly date: Moment
  readonly digest: string
}

export interface Issuing {
  readonly records: Records
  /** The lot's source, computed at a date not earlier than the issue's. */
  readonly state: SourceState
  /** The lot's place in `state.lots`. */
  readonly place: number
  readonly program: string
  /** Random text of the private part, new for each document. */
  readonly salt: string
}

/** @throws RangeError when the date lies before the earlier revision's */
export function issueRevision(
  issuing: Issuing,
  request: IssueRequest,
  earlier: EarlierRevision | undefined,
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
    replaces:
      earlier === undefined ? null : { revision: earlier.number, date: earlier.date, digest: earlier.digest },
  }
  const { records, state, place } = issuing
  const judged = judgeLot(records, state, place, request.date)
  return frozen(withoutProjects(judged, records.site), issue, issuing)
}

/** Digest before the private part is known; it is as long as any other. */
const NO_DIGEST = `sha256-${'0'.repeat(64)}`

function frozen(lot: JudgedLot, issue: Issue, issuing: Issuing): IssuedRevision {
  const replacement = issue.replacedBy === null ? [] : [issue.replacedBy]
  const concerned = concernedGroups(lot, replacement, issuedBy(issuing.records, issue.date))
  const withheld = documentOf(lot, issue, issuing, new Set(WITHHELD))
  const part: PrivatePart = {
    format: 2,
    salt: issuing.salt,
    certificate: lot.id,
    revision: issue.revision,
    ...Object.fromEntries(
      concerned.flatMap((group) => {
        const shown = documentOf(lot, issue, issuing, new Set(others(group)))
        const revealed = revealedIn(withheld, shown)
        return revealed.length === 0 ? [] : [[group, revealed]]
      }),
    ),
  }
  const privateText = canonicalJson(part)
  const document = { ...withheld, private: digestOf(privateText) }
  const stored = withoutParts(document)
  const text = canonicalJson(stored.document)
  const digest = digestOf(text)
  return {
    document,
    text,
    digest,
    parts: new Map([...stored.parts, [document.private, privateText]]),
    recordLine: revisionLine(issue, digest),
  }
}

function others(group: Withheld): Withheld[] {
  return WITHHELD.filter((other) => other !== group)
}

function documentOf(
  lot: JudgedLot,
  issue: Issue,
  { records, program }: Issuing,
  withholding: ReadonlySet<Withheld>,
): IssuedDocument {
  const stating = { records, issue, withholding, isIssued: issuedBy(records, issue.date) }
  const facts = certificateFacts(lot, stating)
  const { state, by, replacedBy } = facts
  if (state === 'draft' || by === null)
    throw new RangeError(`documentOf needs a certificate that is issued, got a draft of ${lot.id}`)
  return defined({
    format: 2 as const,
    certificate: lot.id,
    revision: issue.revision,
    state,
    issued: issue.date.text,
    by: by.name,
    function: issue.function,
    reason: issue.reason,
    replacedBy: replacedBy === null ? undefined : (replacedBy.id ?? replacedBy.text),
    replaces: issue.replaces === null ? undefined : { ...issue.replaces, date: issue.replaces.date.text },
    program,
    private: NO_DIGEST,
    ...documentContent(lot, facts, stating),
  })
}

/** Says of a lot whether a revision of it was issued by a day. */
export function issuedBy({ lots }: Pick<Records, 'lots'>, date: Moment): (lot: string) => boolean {
  return (lot) => lots.get(lot)?.revisions?.some((revision) => isBy(revision.date, date)) ?? false
}
