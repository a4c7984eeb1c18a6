/** What was known of a lot on the day that a shipment of it left. */
import type { Age } from '../measure/age.ts'
import { isBy, laterOf, type Moment } from '../measure/moment.ts'
import { knownSince, type PlannedTest, type Result } from '../result/result.ts'

/** What became known of a lot, and when. */
export interface LotOverTime {
  /** Ages at which activity indices are tested, the shortest first. */
  readonly ages: readonly KnownAge[]
  /** Certificates by date. */
  readonly revisions: readonly { readonly date: Moment; readonly state: string }[]
  /**
   * Day from which on its governing verdict has been that it does not meet; null where it is not today, or where an
   * overdue result can still meet all that it is for.
   */
  readonly failed: Moment | null
  /** Clauses that the verdict is for, in the order of the set; none without a day on which it failed. */
  readonly failing: readonly FailingClause[]
}

/** A clause that is not met and that no overdue result can still meet. */
export interface FailingClause {
  readonly clause: string
  /** Day from which on it has not been met; null where no result came or changed since it has not. */
  readonly known: Moment | null
}

export interface KnownAge {
  readonly age: Age
  /** Day by which the indices of the age were known; null while one is awaited. */
  readonly known: Moment | null
}

/** How a shipment stood on its day. */
export interface OnShipping {
  /** Ages whose indices were not known, the shortest first. */
  readonly unknown: readonly Age[]
  readonly certificate: 'none' | 'in-force' | 'withdrawn'
  /** Whether the lot was known not to meet, came not to meet afterwards, or neither. */
  readonly failure: 'known' | 'afterwards' | 'none'
}

/**
 * How a shipment stood on the day that it left.
 * @param lot as its record tells of its days
 * @param day calendar date of shipping
 * Note: what became known or was issued on the day of shipping counts as known: neither states its hour for certain.
 */
export function onShipping(lot: Omit<LotOverTime, 'failing'>, day: Moment): OnShipping {
  const revision = lot.revisions.findLast(({ date }) => isBy(date, day))
  return {
    unknown: lot.ages.filter(({ known }) => known === null || !isBy(known, day)).map(({ age }) => age),
    certificate: certificateOf(revision),
    failure: failureOn(lot.failed, day),
  }
}

function certificateOf(revision: LotOverTime['revisions'][number] | undefined): OnShipping['certificate'] {
  if (revision === undefined) return 'none'
  return revision.state === 'withdrawn' ? 'withdrawn' : 'in-force'
}

function failureOn(failed: Moment | null, day: Moment): OnShipping['failure'] {
  if (failed === null) return 'none'
  return isBy(failed, day) ? 'known' : 'afterwards'
}

/** Indices of which a limit asks by age. */
const INDICES: readonly string[] = ['strength-activity-index', 'resistivity-index']

/**
 * The ages of a lot's activity indices with the day by which each was known.
 * @param lot its results, and its planned tests that have no result
 * @returns the shortest age first; results of verification are left out
 */
export function knownAges(lot: {
  readonly results: readonly Result[]
  readonly planned: readonly PlannedTest[]
}): KnownAge[] {
  const ages = new Map<number, KnownAge>()
  for (const result of lot.results) {
    const { age, property, role } = result
    if (age === undefined || role === 'verification' || !INDICES.includes(property)) continue
    const known = knownSince(result)
    const before = ages.get(age.hours)?.known
    ages.set(age.hours, { age, known: before ? laterOf(before, known) : known })
  }
  for (const { age, property } of lot.planned)
    if (INDICES.includes(property)) ages.set(age.hours, { age, known: null })
  return [...ages.values()].sort((a, b) => a.age.hours - b.age.hours)
}

/**
 * The day from which on an outcome has held without a break.
 * @param days on which it may have changed, in order
 * @param holds whether it holds on a day; asked from the last day backwards, as seldom as can be
 * @returns null where it does not hold on the last day, or there is none
 */
export function heldSince(days: readonly Moment[], holds: (day: Moment) => boolean): Moment | null {
  let since: Moment | null = null
  for (const day of days.toReversed()) {
    if (!holds(day)) return since
    since = day
  }
  return since
}
