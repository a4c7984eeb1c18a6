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
/** What ends a listing until something else is said. */
const ENDS: readonly Entry['action'][] = ['suspended', 'removed']

export function sourceListing({ asOf }: Pick<Edition, 'asOf'>, { record }: SourceEntry): SourceListing {
  const history = [...(record.listing ?? [])].sort((a, b) => compareMoments(a.date, b.date))
  return {
    now: listingWords(stateOf(history, asOf)),
    history: history.map((entry) => ({ on: shortDate(entry.date), text: entryWords(entry) })),
    approvals: (record.approvals ?? []).map(({ from, to, by, scope, evidence }) => ({
      on: shortDate(from),
      text: `${by}: ${scope}${to === undefined ? '' : `, to ${shortDate(to)}`}${evidence === undefined ? '' : `; evidence: ${evidence}`}`,
    })),
  }
}

/** The newest entry says what holds; scope and end come from the newest that names them. */
function stateOf(history: readonly Entry[], asOf: Moment): Parameters<typeof listingWords>[0] {
  const last = history.at(-1)
  if (last === undefined) return null
  const { by } = last
  if (ENDS.includes(last.action)) return { by, ended: `${ACTIONS[last.action]} on ${shortDate(last.date)}` }
  const to = history.findLast((entry) => entry.to !== undefined)?.to
  if (to !== undefined && to.day < asOf.day) return { by, ended: `listing ended on ${shortDate(to)}` }
  const scope = history.findLast((entry) => entry.scope !== undefined)?.scope
  return { by, ...(to === undefined ? {} : { to }), ...(scope === undefined ? {} : { scope }) }
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
