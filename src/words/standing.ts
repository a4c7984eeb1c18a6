/** State and verdict of a lot in one phrase, so that neither is read without the other. */
import type { Outcome } from '../core/criteria/outcome.ts'
import type { Moment } from '../core/measure/moment.ts'
import { date } from './dates.ts'
import { outcomeWords } from './outcomes.ts'

export interface Standing {
  readonly state: 'draft' | 'provisional' | 'complete' | 'withdrawn'
  /** Under the governing criterion; null where none applies. */
  readonly outcome: Outcome | null
  /** Date of the withdrawal. */
  readonly withdrawn?: Moment | string
  /** Next date at which a result is due. */
  readonly due?: Moment | string
  /** Last date on which a result that never came was awaited. */
  readonly overdueSince?: Moment | string
}

/** "meets so far; next result due 4 July 2026", without a full stop. */
export function standingWords(standing: Standing): string {
  const { state, due, overdueSince } = standing
  const verdict = verdictOf(standing)
  const overdue = overdueSince === undefined ? [] : [`a result has been overdue since ${date(overdueSince)}`]
  switch (state) {
    case 'withdrawn':
      return `withdrawn${standing.withdrawn === undefined ? '' : ` ${date(standing.withdrawn)}`}; was: ${verdict}`
    case 'draft':
      return [`draft, never issued; on today’s records: ${verdict}`, ...overdue].join('; ')
    case 'provisional': {
      const awaited = due === undefined ? 'results awaited' : `next result due ${date(due)}`
      return [verdict, awaited, ...overdue].join('; ')
    }
    case 'complete':
      return [verdict, ...(overdue.length > 0 ? overdue : ['all planned tests reported'])].join('; ')
  }
}

function verdictOf({ state, outcome }: Standing): string {
  if (outcome === null) return 'no criterion applies'
  const soFar =
    state === 'provisional' && (outcome === 'meets' || outcome === 'meets-by-approval') ? ' so far' : ''
  return `${outcomeWords(outcome)}${soFar}`
}
