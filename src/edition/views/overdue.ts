/** Results that have not come in time: part of how a lot stands, so shown wherever its state is. */
import { compareMoments } from '../../core/measure/moment.ts'
import { dueWords, overdueWords, testName } from '../../words/standing.ts'
import { paths } from '../shape/addresses.ts'
import type { Edition, ListedLot } from '../shape/edition.ts'
import { namedTest, type NamesConditions } from '../shape/standing.ts'
import { type Linked, linked } from './linked.ts'

export interface OverdueLine {
  readonly lot: Linked
  /** "28 d strength activity index, due 28 January 2026, overdue since 4 February 2026". */
  readonly text: string
}

/** Each missing result on a line of its own, the longest missing first. */
export function overdueLines(
  edition: NamesConditions & Pick<Edition, 'address'>,
  lots: Iterable<ListedLot>,
): OverdueLine[] {
  return [...lots]
    .flatMap((lot) =>
      lot.awaited.flatMap((test) =>
        test.overdueSince === undefined ? [] : [{ lot, test, since: test.overdueSince }],
      ),
    )
    .sort((a, b) => compareMoments(a.since, b.since))
    .map(({ lot, test, since }) => ({
      lot: linked(edition, lot.number, paths.certificate(lot.id)),
      text: `${testName(namedTest(edition, test))}, ${dueWords(test.due)}, ${overdueWords(since)}`,
    }))
}

/** How many results of a source's lots are overdue. */
export function overdueCount(lots: readonly ListedLot[]): number {
  return lots.flatMap(({ awaited }) => awaited).filter(({ overdueSince }) => overdueSince !== undefined)
    .length
}
