/** The same lots under several sets: which lots change outcome, and which clauses decided. */
import { isNeutral } from '../criteria/combining.ts'
import type { Outcome } from '../criteria/outcome.ts'
import type { Verdict } from '../criteria/verdict.ts'

/** One lot under each set, in the order of the sets; null where a set is not for its material. */
export interface ComparedLot {
  readonly lot: string
  readonly verdicts: readonly (Verdict | null)[]
  readonly changes: boolean
}

/**
 * A lot's verdicts, and whether the sets that judge it give more than one outcome. A set that does not apply to the lot
 * gives none.
 * @param lot its id
 */
export function compareLot(lot: string, verdicts: readonly (Verdict | null)[]): ComparedLot {
  const outcomes = new Set(verdicts.flatMap((verdict) => outcomeOf(verdict) ?? []))
  return { lot, verdicts, changes: 1 < outcomes.size }
}

/**
 * How many lots come out alike under two sets, how often each change occurs, and how many only one of the two judges.
 * @param first,second places of the sets among the verdicts, from 0
 */
export function changesBetween(
  lots: readonly ComparedLot[],
  first: number,
  second: number,
): { readonly alike: number; readonly changes: ReturnType<typeof crossTable>; readonly oneSided: number } {
  const pairs = crossTable(lots, first, second)
  const isJudged = ({ verdicts }: ComparedLot, place: number) => outcomeOf(verdicts[place]) !== null
  return {
    oneSided: lots.filter((lot) => isJudged(lot, first) !== isJudged(lot, second)).length,
    alike: pairs.filter(({ from, to }) => from === to).reduce((sum, { count }) => sum + count, 0),
    changes: pairs.filter(({ from, to }) => from !== to),
  }
}

/**
 * How often the second set gives each outcome where the first gave each: one entry for a pair that occurs.
 */
function crossTable(
  lots: readonly ComparedLot[],
  first: number,
  second: number,
): { readonly from: Outcome; readonly to: Outcome; readonly count: number }[] {
  const pairs = Map.groupBy(
    lots.flatMap(({ verdicts }) => {
      const [from, to] = [outcomeOf(verdicts[first]), outcomeOf(verdicts[second])]
      return from === null || to === null ? [] : [{ from, to }]
    }),
    ({ from, to }) => `${from}|${to}`,
  )
  return [...pairs.values()].flatMap((members) =>
    members[0] === undefined ? [] : [{ ...members[0], count: members.length }],
  )
}

/** null where a set does not judge the lot, or none of its clauses applies to it. */
function outcomeOf(verdict: Verdict | null | undefined): Outcome | null {
  return verdict == null || isNeutral(verdict.outcome) ? null : verdict.outcome
}
