/** Limits of which a clause takes any one: a single result beyond one of them does not fail the clause. */
import { kept } from '../measure/kept.ts'
import type { Result } from '../result/result.ts'
import type { Side, SidesOfLimit } from './sides.ts'

/** What is asked of a producer's and an agency's result side by side. */
interface Sided {
  readonly kind: string
  readonly agency: Pick<Result, 'laboratory' | 'sample'>
  readonly sides: readonly SidesOfLimit[]
}

/**
 * Says of each limit that is one of several ways to meet a clause what the other ways change.
 * @param pairs of one lot
 * @returns the pairs, in the same order
 * Note: a way counts for an agency by the results on the same sample of the same laboratory.
 */
export function withOtherWays<P extends Sided>(pairs: readonly P[]): P[] {
  const ways = new Map<string, SidesOfLimit[]>()
  for (const pair of pairs)
    for (const side of pair.sides)
      if (side.oneOf !== undefined) kept(ways, keyOf(pair, side), (): SidesOfLimit[] => []).push(side)
  return pairs.map((pair) => ({
    ...pair,
    sides: pair.sides.map((side) =>
      side.oneOf === undefined ? side : { ...side, otherWay: otherWayOf(ways.get(keyOf(pair, side)) ?? []) },
    ),
  }))
}

function keyOf({ kind, agency }: Sided, { oneOf }: SidesOfLimit): string {
  return [kind, agency.laboratory, agency.sample, oneOf].join('|')
}

function otherWayOf(ways: readonly SidesOfLimit[]): SidesOfLimit['otherWay'] {
  const meets = (of: (side: SidesOfLimit) => Side) => ways.some((side) => of(side) === 'meets')
  if (meets(({ producer }) => producer) && meets(({ agency }) => agency)) return 'both-meet'
  return ways.length === 1 ? 'not-tested' : 'changes-nothing'
}
