/** Results that are due: what a laboratory has before it, the next first. */
import { compareMoments } from '../../core/measure/moment.ts'
import { dueWords, testName } from '../../words/standing.ts'
import { paths } from '../shape/addresses.ts'
import type { Edition, ListedLot } from '../shape/edition.ts'
import { namedTest, type NamesConditions } from '../shape/standing.ts'
import { type Linked, linked } from './linked.ts'

export interface DueLine {
  readonly lot: Linked
  /** "28 d strength activity index, due 22 April 2026". */
  readonly text: string
}

/** Each result that is due and not overdue, on a line of its own. */
export function dueLines(
  edition: NamesConditions & Pick<Edition, 'address'>,
  lots: Iterable<ListedLot>,
): DueLine[] {
  return [...lots]
    .flatMap((lot) =>
      lot.awaited.filter((test) => test.overdueSince === undefined).map((test) => ({ lot, test })),
    )
    .sort((a, b) => compareMoments(a.test.due, b.test.due) || (a.lot.id < b.lot.id ? -1 : 1))
    .map(({ lot, test }) => ({
      lot: linked(edition, lot.number, paths.certificate(lot.id)),
      text: `${testName(namedTest(edition, test))}, ${dueWords(test.due)}`,
    }))
}
