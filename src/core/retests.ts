/** Which readings a retest replaces: only what it names in `retest-of`. */
import { compareMoments } from './moment.ts'

interface Retestable { readonly age: string; readonly tested?: string; readonly 'retest-of'?: string }

/**
 * @param readings of one mortar and property, in the order of the record
 * @returns each replaced reading with the moment of the retest that replaces it
 * Notes: 1. `retest-of` names the moment of the replaced test, or its date alone; 2. a retest never replaces one made after it,
 * nor itself, where the date names both.
 */
export function replacedReadings<T extends Retestable>(readings: readonly T[]): Map<T, string> {
  const replaced = new Map<T, string>()
  for (const [place, retest] of readings.entries()) {
    if (retest['retest-of'] === undefined) continue
    for (const [other, reading] of readings.entries()) {
      const isEarlier = comesBefore({ reading, place: other }, { reading: retest, place })
      if (isEarlier && isNamed(reading, retest)) replaced.set(reading, retest.tested ?? '')
    }
  }
  return replaced
}

/** Retests that replace nothing: what they name was never tested, or was tested after them. */
export function idleRetests<T extends Retestable>(readings: readonly T[]): T[] {
  return readings.filter((retest, place) => retest['retest-of'] !== undefined && !readings.some((reading, other) => comesBefore({ reading, place: other }, { reading: retest, place }) && isNamed(reading, retest)))
}

function isNamed(reading: Retestable, retest: Retestable): boolean {
  return reading.age === retest.age && reading.tested !== undefined && compareMoments(reading.tested, retest['retest-of'] ?? '') === 0
}

/** By the moment of the test; at one moment, or on one date without clock times, by the order of the record. */
function comesBefore(first: { reading: Retestable; place: number }, second: { reading: Retestable; place: number }): boolean {
  const order = compareMoments(first.reading.tested ?? '', second.reading.tested ?? '')
  return order < 0 || (order === 0 && first.place < second.place)
}
