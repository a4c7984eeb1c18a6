/** Which readings a retest replaces: only what it names in `retest-of`. */
import { type Age, isSameAge } from '../measure/age.ts'
import { isSurelyBefore, type Moment } from '../measure/moment.ts'

interface Retestable {
  readonly age: Age
  readonly tested?: Moment
  readonly 'retest-of'?: Moment
}

/**
 * The readings that retests replace.
 * @param readings of one mortar and property, in the order of the record
 * @returns each replaced reading with the moment of the retest that replaces it
 * Notes: 1. `retest-of` names the moment of the replaced test, or its date alone; 2. a retest never replaces
 * one made after it, nor itself, where the date names both; 3. one that is only planned replaces nothing yet.
 */
export function replacedReadings<T extends Retestable>(readings: readonly T[]): Map<T, Moment> {
  const replaced = new Map<T, Moment>()
  for (const [place, { tested }] of readings.entries()) {
    if (tested !== undefined) for (const reading of namedBy(readings, place)) replaced.set(reading, tested)
  }
  return replaced
}

/** Retests that name nothing they could replace: it was never tested, or was tested after them. */
export function idleRetests<T extends Retestable>(readings: readonly T[]): T[] {
  return readings.filter(
    (reading, place) => reading['retest-of'] !== undefined && namedBy(readings, place).length === 0,
  )
}

/** The readings before a retest that it names; none for a reading that is no retest. */
function namedBy<T extends Retestable>(readings: readonly T[], place: number): T[] {
  const retest = readings[place]
  const named = retest?.['retest-of']
  if (retest === undefined || named === undefined) return []
  return readings.filter((reading, other) => {
    if (!isSameAge(reading.age, retest.age) || reading.tested === undefined) return false
    if (!mayBeOne(reading.tested, named)) return false
    // A planned retest comes last. At one moment, or on one date without clock times, the order of the record
    // decides.
    if (retest.tested === undefined || isSurelyBefore(reading.tested, retest.tested)) return true
    return other < place && mayBeOne(reading.tested, retest.tested)
  })
}

/** Whether two moments are one as far as is on record: of a date alone nothing more is known. */
function mayBeOne(a: Moment, b: Moment): boolean {
  return !isSurelyBefore(a, b) && !isSurelyBefore(b, a)
}
