/** What one run of npm run issue would write, or why it may not. */
import { randomBytes } from 'node:crypto'
import { defined } from '../core/measure/defined.ts'
import { presentId, sourceOf } from '../core/measure/lot-id.ts'
import { isBy, isSurelyBefore, type Moment } from '../core/measure/moment.ts'
import { type Changes, changesBetween, isUnchanged } from '../edition/certificate/changes.ts'
import type { IssueRequest } from '../edition/certificate/issue.ts'
import { carryOutPlan, type PlannedIssue } from '../edition/certificate/issue-plan.ts'
import { latestResult } from '../edition/passes/latest-result.ts'
import { sampledAt } from '../edition/passes/computed-lot.ts'
import type { IssuedDocument } from '../edition/shape/document.ts'
import { nearNames } from '../records/diagnostics/near-names.ts'
import { type PrivatePart, withRevealed } from '../records/issued/private-part.ts'
import { type IssuedReader, issuedReader } from '../records/issued/read-document.ts'
import type { Records } from '../records/records.ts'
import type { Lot, Producer } from '../records/schema/loaded-records.ts'
import { leftForAll, leftForLot, type LeftText } from './left-texts.ts'
import { CommandFailure, EXIT, PROGRAM } from './program.ts'
import { progress } from './progress.ts'

type Signatory = NonNullable<Producer['signatories']>[number]

export interface PlannedRevision extends PlannedIssue {
  /** Against the revision before it; null for a lot's first. */
  readonly changes: Changes | null
}

export interface IssueOrder {
  readonly lots: readonly string[]
  readonly date: Moment
  readonly by?: string
  readonly reason?: string
  readonly function?: string
  readonly withdraw?: boolean
  readonly replacedBy?: string
}

/** @throws CommandFailure for the first lot that may not be issued; nothing is issued then */
export function planIssue(records: Records, order: IssueOrder): PlannedRevision[] {
  refuseLeft('Nothing can', leftForAll(records))
  const requests = [...new Set(order.lots)].map((lot) => requestFor(records, lot, order))
  const reader = issuedReader(records.contentDir)
  const issuing = { program: PROGRAM, saltOf: () => randomBytes(16).toString('base64url') }
  const telling = progress()
  const planned = []
  for (const issue of carryOutPlan(records, requests, order.date, issuing)) {
    planned.push({ ...issue, changes: changesOf(issue, reader) })
    telling.at(`Making certificate ${planned.length} of ${requests.length}`)
  }
  telling.end()
  const unchanged = planned.filter((issue) => saysNothingNew(records, issue))
  if (unchanged.length > 0)
    throw new CommandFailure(
      unchanged
        .map(({ request: { lot, withdrawn }, revision: { document } }) =>
          withdrawn
            ? `${lot} is already withdrawn.`
            : `${lot} would say nothing new after revision ${document.revision - 1}; nothing was issued.`,
        )
        .join('\n'),
      EXIT.failed,
      'leave these lots out',
    )
  return planned
}

/** A lot not yet issued is printed without its id, so that one in the place of another shows in the record alone. */
function saysNothingNew({ lots }: Records, { request, changes }: PlannedRevision): boolean {
  const before = lots.get(request.lot)?.revisions?.at(-1)
  return changes !== null && isUnchanged(changes) && request.replacedBy === before?.['replaced-by']
}

function requestFor(records: Records, lot: string, order: IssueOrder): IssueRequest {
  const record = recordOf(records, lot)
  refuseLeft(`${lot} cannot`, leftForLot(records, lot))
  const replacedBy = replacementFor(records, lot, order)
  checkDate(lot, record, order)
  const { date, by = '', reason = '', withdraw } = order
  return defined({
    lot,
    date,
    by,
    function: functionOf(records, sourceOf(lot), order),
    reason,
    withdrawn: withdraw === true,
    // A further withdrawal keeps the lot that was named before.
    replacedBy: replacedBy ?? (withdraw ? record.revisions?.at(-1)?.['replaced-by'] : undefined),
  })
}

function recordOf({ lots, contentDir }: Records, lot: string): Lot {
  const record = lots.get(lot)
  if (record !== undefined) return record
  throw new CommandFailure(
    `There is no lot ${lot} in ${contentDir}, or nothing has been written into its record yet.`,
    EXIT.wrongUse,
    nearNames(lot, lots.keys()) ||
      `write it as SOURCE/LOT, for instance ${[...lots.keys()][0] ?? 'fly-ash/FA-001'}`,
  )
}

/** @param what "SOURCE/LOT cannot" @throws CommandFailure for a text that nobody has replaced */
function refuseLeft(what: string, left: LeftText | null): void {
  if (left === null) return
  throw new CommandFailure(
    `${what} be issued while ${left.file} still says ${left.text}.`,
    EXIT.failed,
    'write your own text in place of each such text in that file',
  )
}

/** By its present id, whichever was given. */
function replacementFor(
  { lots }: Records,
  lot: string,
  { replacedBy }: IssueOrder,
): IssueRequest['replacedBy'] {
  if (replacedBy === undefined) return undefined
  const replacement = presentId(lots, replacedBy)
  if (replacement === undefined)
    throw new CommandFailure(`There is no lot ${replacedBy} to replace ${lot}.`, EXIT.wrongUse)
  if (replacement === lot) throw new CommandFailure(`${lot} cannot replace itself.`, EXIT.wrongUse)
  return replacement
}

function checkDate(lot: string, record: Lot, { date, withdraw }: IssueOrder): void {
  const refuse = (message: string, mend?: string) => {
    throw new CommandFailure(message, EXIT.wrongUse, mend)
  }
  const earlier = record.revisions?.at(-1)
  if (withdraw === true && earlier === undefined)
    refuse(`${lot} was never issued, so there is nothing to withdraw.`)
  if (withdraw !== true && earlier?.withdrawn === 'yes')
    refuse(`${lot} is withdrawn.`, 'issue another lot in its place; a withdrawn one stays withdrawn')
  if (!isBy(sampledAt(record), date))
    refuse(`${lot} was sampled after ${date}, so it cannot be issued on that date.`)
  if (earlier !== undefined && isSurelyBefore(date, earlier.date))
    refuse(
      `Revision ${earlier.number} of ${lot} is dated ${earlier.date}, later than ${date}.`,
      'give a later --date',
    )
  const last = latestResult(record)
  if (last !== undefined && !isBy(last, date))
    refuse(
      `The record of ${lot} holds a result of ${last}, later than ${date}.`,
      'give a later --date: a certificate leaves out nothing that its record holds',
    )
}

/**
 * Whether somebody signs for the producer of a lot: as one of its signatories, or in a function that is given, unless
 * another producer has the person on record.
 */
export function signsFor(records: Records, lot: string, order: Pick<IssueOrder, 'by' | 'function'>): boolean {
  if (signatoryFor(records, sourceOf(lot), order) !== undefined) return true
  return (
    order.function !== undefined && ![...records.producers.values()].some((other) => signatory(other, order))
  )
}

function signatory({ signatories = [] }: Producer, { by }: Pick<IssueOrder, 'by'>): Signatory | undefined {
  return signatories.find(({ name }) => name === by)
}

function signatoryFor(
  { producers, sources }: Records,
  source: string,
  order: Pick<IssueOrder, 'by'>,
): Signatory | undefined {
  const producer = producers.get(sources.get(source)?.producer ?? '')
  return producer && signatory(producer, order)
}

function functionOf(records: Records, source: string, order: IssueOrder): string {
  const named = order.function ?? signatoryFor(records, source, order)?.function
  if (named === undefined)
    throw new CommandFailure(
      `${order.by} is not among the producer’s signatories.`,
      EXIT.wrongUse,
      'add the person to the producer’s record, or give --function',
    )
  return named
}

/** Compared with names and seals in their places: a corrected name is a change. */
function changesOf({ request, revision }: PlannedIssue, reader: IssuedReader): Changes | null {
  const { document, parts } = revision
  if (document.replaces === undefined) return null
  const stored = reader.document(request.lot, document.replaces.revision)
  if (stored === null) return null
  const before = stored.document as IssuedDocument
  const own = JSON.parse(parts.get(document.private) ?? 'null') as PrivatePart
  return changesBetween(
    withoutOccasion(whole(before, reader.privatePart(before.private))),
    withoutOccasion(whole(document, own)),
  )
}

/** The day and the reason of a withdrawal tell of the issue, as its head does, and change nothing of themselves. */
function withoutOccasion(document: IssuedDocument): IssuedDocument {
  const { withdrawal } = document.printed
  if (withdrawal === undefined) return document
  return { ...document, printed: { ...document.printed, withdrawal: { ...withdrawal, on: '', reason: '' } } }
}

function whole(document: IssuedDocument, part: PrivatePart | null): IssuedDocument {
  return part === null ? document : withRevealed(document, part, ['persons', 'seals'])
}
