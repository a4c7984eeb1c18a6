/** Where a source stands on an agency's list, and how it came to stand there. */
import { compareMoments, type Moment } from '../../core/measure/moment.ts'
import { shortDate } from '../../words/dates.ts'
import { listingWords } from '../../words/source-strip.ts'
import type { Edition, SourceEntry } from '../shape/edition.ts'

export interface ListingLine {
  readonly on: string
  readonly text: string
}

export interface SourceListing {
  /** For the head of the page. */
  readonly now: string
  /** Agency that listed or approved it last; null for none. */
  readonly by: string | null
  readonly history: readonly ListingLine[]
  readonly approvals: readonly ListingLine[]
}

type Entry = NonNullable<SourceEntry['record']['listing']>[number]

const ACTIONS: Readonly<Record<Entry['action'], string>> = {
  listed: 'listed',
  renewed: 'listing renewed',
  'scope-changed': 'scope changed',
  'condition-set': 'condition set',
  suspended: 'listing suspended by the agency',
  reinstated: 'listing reinstated by the agency',
  removed: 'taken off the list by the agency',
}
/** From when a listing without an end holds. */
const BEGINS: readonly Entry['action'][] = ['listed', 'reinstated']
/** What ends a listing until something else is said. */
const ENDS: readonly Entry['action'][] = ['suspended', 'removed']

/** What was on record on a day. Approvals of the source as a whole stand for a listing where the record has no listing history. */
export function sourceListing({ asOf }: Pick<Edition, 'asOf'>, { record }: SourceEntry): SourceListing {
  const history = [...(record.listing ?? [])]
    .filter(({ date }) => date.day <= asOf.day)
    .sort((a, b) => compareMoments(a.date, b.date))
  const state = history.length === 0 ? approvedState(record, asOf) : stateOf(history, asOf)
  return {
    now: listingWords(state),
    by: state?.by ?? null,
    history: history.map((entry) => ({ on: shortDate(entry.date), text: entryWords(entry) })),
    approvals: (record.approvals ?? []).map(({ from, to, by, scope, evidence }) => ({
      on: shortDate(from),
      text: `${by}: ${scope}${to === undefined ? '' : `, to ${shortDate(to)}`}${evidence === undefined ? '' : `; evidence: ${evidence}`}`,
    })),
  }
}

type State = Parameters<typeof listingWords>[0]

/** Whether an agency has listed the source, or approved it as a whole, at any time. */
export function hasListing({ listing = [], ...record }: SourceEntry['record']): boolean {
  return 0 < listing.length || 0 < wholeApprovals(record).length
}

/** An approval for one clause or set says nothing of the others. */
function wholeApprovals({
  approvals = [],
}: Pick<SourceEntry['record'], 'approvals'>): NonNullable<SourceEntry['record']['approvals']> {
  return approvals.filter(({ set, clause }) => set === undefined && clause === undefined)
}

/** The newest approval in force, else the one that ended last. */
function approvedState(record: SourceEntry['record'], asOf: Moment): State {
  const begun = wholeApprovals(record)
    .filter(({ from }) => from.day <= asOf.day)
    .sort((a, b) => compareMoments(a.from, b.from))
  const inForce = begun.findLast(({ to }) => to === undefined || asOf.day <= to.day)
  if (inForce !== undefined) {
    const { by, from: since, to, scope } = inForce
    return { by, since, scope, ...(to === undefined ? {} : { to }) }
  }
  const last = begun.toSorted((a, b) => (a.to?.day ?? 0) - (b.to?.day ?? 0)).at(-1)
  if (last?.to === undefined) return null
  return { by: last.by, since: last.from, ended: `approval ended on ${shortDate(last.to)}` }
}

/** The newest entry says what holds; scope and end come from the newest that names them. */
function stateOf(history: readonly Entry[], asOf: Moment): State {
  const last = history.at(-1)
  if (last === undefined) return null
  const { by } = last
  const since = (history.findLast(({ action }) => BEGINS.includes(action)) ?? last).date
  if (ENDS.includes(last.action))
    return { by, since, ended: `${ACTIONS[last.action]} on ${shortDate(last.date)}` }
  const to = history.findLast((entry) => entry.to !== undefined)?.to
  if (to !== undefined && to.day < asOf.day) return { by, since, ended: `listing ended on ${shortDate(to)}` }
  const scope = history.findLast((entry) => entry.scope !== undefined)?.scope
  return { by, since, ...(to === undefined ? {} : { to }), ...(scope === undefined ? {} : { scope }) }
}

function entryWords({ by, action, to, scope, reason, 'next-review': review }: Entry): string {
  return [
    `${by}: ${ACTIONS[action]}`,
    scope,
    to && `to ${shortDate(to)}`,
    reason && `reason: ${reason}`,
    review && `next review ${shortDate(review)}`,
  ]
    .filter((part) => part !== undefined)
    .join('; ')
}
