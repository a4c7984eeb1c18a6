/** Which readings a retest replaces: only what it names in `retest-of`. */
import { type Age, isSameAge } from '../measure/age.ts'
import { compareMoments, isSurelyBefore, type Moment } from '../measure/moment.ts'
import { knownFrom } from './known-when.ts'

interface Retestable {
  readonly age: Age
  readonly tested?: Moment
  readonly reported?: Moment
  readonly 'retest-of'?: Moment
}

/**
 * The readings that retests replace.
 * @param readings of one mortar and property, in any order
 * @returns each replaced reading with the moment of the retest that replaces it, the last of several
 * Notes: 1. `retest-of` names the moment of the replaced test, or its date alone; 2. a retest never replaces
 * one made after it, nor itself, where the date names both; 3. one that is only planned replaces nothing yet.
 */
export function replacedReadings<T extends Retestable>(readings: readonly T[]): Map<T, Moment> {
  const replaced = new Map<T, Moment>()
  for (const retest of readings.toSorted(byTest))
    if (retest.tested !== undefined)
      for (const reading of namedBy(readings, retest)) replaced.set(reading, retest.tested)
  return replaced
}

/** Retests that name nothing they could replace: it was never tested, or was tested after them. */
export function idleRetests<T extends Retestable>(readings: readonly T[]): T[] {
  return readings.filter(
    (reading) => reading['retest-of'] !== undefined && namedBy(readings, reading).length === 0,
  )
}

/** The readings before a retest that it names; none for a reading that is no retest. */
function namedBy<T extends Retestable>(readings: readonly T[], retest: T): T[] {
  const named = retest['retest-of']
  if (named === undefined) return []
  return readings.filter((reading) => {
    if (!isSameAge(reading.age, retest.age) || reading.tested === undefined) return false
    // A planned retest comes last.
    return mayBeOne(reading.tested, named) && (retest.tested === undefined || isBefore(reading, retest))
  })
}

/** Of two tests that no clock tells apart, the one that is no retest was made first. */
function isBefore(a: Retestable, b: Retestable): boolean {
  if (a === b || a.tested === undefined || b.tested === undefined) return false
  if (!mayBeOne(a.tested, b.tested)) return isSurelyBefore(a.tested, b.tested)
  return (rankOf(a) - rankOf(b) || byTest(a, b)) < 0
}

/** Whether two moments are one as far as is on record: of a date alone nothing more is known. */
function mayBeOne(a: Moment, b: Moment): boolean {
  return !isSurelyBefore(a, b) && !isSurelyBefore(b, a)
}

function rankOf({ 'retest-of': of }: Retestable): number {
  return of === undefined ? 0 : 1
}

/**
 * The order of two readings by what they state, whatever their places in the record.
 * @returns negative, zero, positive; zero only where nothing tells them apart
 * Note: by when they were tested, a retest after what is none, when they were known, then what else they state.
 */
export function byTest(a: Retestable, b: Retestable): number {
  if (a.tested === undefined || b.tested === undefined)
    return Number(a.tested === undefined) - Number(b.tested === undefined)
  return (
    compareMoments(a.tested, b.tested) ||
    rankOf(a) - rankOf(b) ||
    compareMoments(knownFrom({ ...a, tested: a.tested }), knownFrom({ ...b, tested: b.tested })) ||
    byText(a, b)
  )
}

function byText(a: Retestable, b: Retestable): number {
  const [one, other] = [JSON.stringify(a), JSON.stringify(b)]
  return one === other ? 0 : one < other ? -1 : 1
}
