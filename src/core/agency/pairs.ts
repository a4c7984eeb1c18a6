/** A producer's and an agency's results of one lot, side by side. */
import type { Clause, Criterion } from '../criteria/criterion.ts'
import { representative } from '../history/representative.ts'
import { withOtherWays } from './either-limit.ts'
import { type SidesOfLimit, sidesOfLimits } from './sides.ts'
import { defined } from '../measure/defined.ts'
import { compareMoments, type Moment } from '../measure/moment.ts'
import { isBounded } from '../result/bounds.ts'
import { knownSince, type Result } from '../result/result.ts'
import { type DifferenceLimit, differenceLimit, type PrecisionRow, type TestKey } from './precision.ts'

/**
 * A split tells of testing alone; an independent sample of material, process, sampling and testing. They are
 * never put together.
 */
export type AgencyKind = 'split' | 'independent'

/** What the comparison needs of a lot. */
export interface ComparedLot {
  /** SOURCE/LOT */
  readonly id: string
  readonly number: string
  readonly sampled: Moment
  /** Class that it is judged by; null where it has none. */
  readonly class: string | null
  /** Results known by the date, both sides. */
  readonly results: readonly Result[]
  /** Kind that the record states for a result of the agency; undefined where it states none. */
  readonly statedKind?: (result: Result) => AgencyKind | undefined
  /** The set that governs; undefined where none applies. */
  readonly criterion: Criterion | undefined
  readonly withdrawn?: Moment | undefined
}

export interface Pair extends TestKey {
  readonly kind: AgencyKind
  readonly lot: string
  readonly number: string
  /** End of sampling of the lot. */
  readonly sampled: Moment
  readonly class: string | null
  readonly producer: Result
  readonly agency: Result
  /** When the agency tested. */
  readonly tested: Moment
  /** Agency less producer, in the stored unit; null where one of them is known only within bounds. */
  readonly difference: number | null
  /** Of a split, where a row of precision speaks of it. */
  readonly allowed?: DifferenceLimit
  /** One for each limit of the governing set; none where it sets none for this test. */
  readonly sides: readonly SidesOfLimit[]
}

/**
 * All pairs of one lot.
 * @param lot as known on a date
 * @param rows of precision
 * @returns in order of property, kind and test; none of a withdrawn lot
 * Notes: 1. the producer's result is the one that stands for the lot in its history; 2. of several results of
 * one agency sample and test the representative counts, as there; 3. results that are not valid make no pair;
 * 4. the limit of difference is for splits, because it allows for the scatter of testing and for nothing else.
 */
export function pairsOfLot(lot: ComparedLot, rows: readonly PrecisionRow[]): Pair[] {
  if (lot.withdrawn !== undefined) return []
  const agencies = lot.results.filter((result) => result.valid && isAgencys(result))
  if (agencies.length === 0) return []
  const own = Map.groupBy(
    lot.results.filter((result) => result.valid && result.role === 'producer'),
    testName,
  )
  const bySample = Map.groupBy(agencies, (result) =>
    [testName(result), result.laboratory, result.sample].join('|'),
  )
  const pairs = [...bySample.values()].flatMap((same) => {
    const agency = representative(same)
    const producer = agency && representative(own.get(testName(agency)) ?? [])
    return agency === undefined || producer === undefined ? [] : [pairOf(lot, producer, agency, rows)]
  })
  return withOtherWays(pairs)
}

/** Reported as verification, or on a sample whose duty is to verify. */
export function isAgencys({ role }: Pick<Result, 'role'>): boolean {
  return role === 'verification'
}

/**
 * Whether an agency's result is on a split or on a sample of its own.
 * @returns as the lot's record states it, else split for a sample of that kind
 */
export function kindOf(result: Result, { statedKind }: Pick<ComparedLot, 'statedKind'>): AgencyKind {
  return statedKind?.(result) ?? (result.sampleKind === 'split' ? 'split' : 'independent')
}

/**
 * Name of what was tested.
 * @returns property, condition and age in hours joined by "|"
 */
export function testName({ property, condition, age }: TestKey): string {
  return [property, condition ?? '', age?.hours ?? ''].join('|')
}

function pairOf(lot: ComparedLot, producer: Result, agency: Result, rows: readonly PrecisionRow[]): Pair {
  const { property, condition, age } = agency
  const kind = kindOf(agency, lot)
  const bounded = isBounded(producer) || isBounded(agency)
  const allowed =
    kind === 'independent' || bounded
      ? undefined
      : differenceLimit(rows, { property, condition, age }, (producer.value + agency.value) / 2)
  return defined({
    kind,
    property,
    condition,
    age,
    lot: lot.id,
    number: lot.number,
    sampled: lot.sampled,
    class: lot.class,
    producer,
    agency,
    tested: agency.tested,
    difference: bounded ? null : agency.value - producer.value,
    allowed,
    sides: sidesOf(lot.criterion?.clauses ?? [], lot.class, { producer, agency }),
  })
}

function sidesOf(
  clauses: readonly Clause[],
  lotClass: string | null,
  two: Pick<Pair, 'producer' | 'agency'>,
  oneOf?: string,
): SidesOfLimit[] {
  return clauses.flatMap((clause) => {
    if (clause.form !== 'group')
      return sidesOfLimits(clause, lotClass, two).map((side) => defined({ ...side, oneOf }))
    return sidesOf(clause.members, lotClass, two, clause.combine === 'any-of' ? clause.id : undefined)
  })
}

/**
 * Whether the difference lies beyond its limit.
 * @returns null without a difference or without a limit
 */
export function isBeyond({ difference, allowed }: Pick<Pair, 'difference' | 'allowed'>): boolean | null {
  if (difference === null || allowed === undefined) return null
  // A limit is computed, a difference of figures as written is not: dust must not put one beyond the other.
  return allowed.limit * (1 + 1e-9) < Math.abs(difference)
}

/**
 * Whether one of the two results meets a limit that the other would not.
 * Note: a limit is passed over where the clause takes another result too, and both sides meet it by one.
 */
export function areOpposite({ sides }: Pick<Pair, 'sides'>): boolean {
  return sides.some(
    ({ producer, agency, otherWay }) =>
      otherWay !== 'both-meet' && [producer, agency].sort().join() === 'meets,would-not-meet',
  )
}

/**
 * Order of the agency's tests, then of the lots' ids.
 * @returns negative where the first comes before
 */
export function byTestDate(a: Pair, b: Pair): number {
  return (
    compareMoments(a.tested, b.tested) ||
    compareMoments(knownSince(a.agency), knownSince(b.agency)) ||
    (a.lot < b.lot ? -1 : 1)
  )
}
