/** Which readings a retest replaces: only what it names in `retest-of`. */
import { compareMoments } from '../measure/moment.ts'

interface Retestable {
  readonly age: string
  readonly tested?: string
  readonly 'retest-of'?: string
}

/**
 * @param readings of one mortar and property, in the order of the record
 * @returns each replaced reading with the moment of the retest that replaces it
 * Notes: 1. `retest-of` names the moment of the replaced test, or its date alone; 2. a retest never replaces
 * one made after it,
 * nor itself, where the date names both; 3. one that is only planned replaces nothing yet.
 */
export function replacedReadings<T extends Retestable>(readings: readonly T[]): Map<T, string> {
  const replaced = new Map<T, string>()
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
    if (
      reading.age !== retest.age ||
      reading.tested === undefined ||
      compareMoments(reading.tested, named) !== 0
    )
      return false
    // At one moment, or on one date without clock times, the order of the record decides; a planned retest
    // comes last.
    const order = retest.tested === undefined ? -1 : compareMoments(reading.tested, retest.tested)
    return order < 0 || (order === 0 && other < place)
  })
}
