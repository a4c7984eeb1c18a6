/** The readings of one mortar, each with what makes it unfit or is worth a note. */
import { dateOf } from '../measure/moment.ts'
import { ageReasons } from '../mortar/age-tolerance.ts'
import type { MortarMeasurement } from '../mortar/mortar-measurement.ts'
import type { Mortar, MortarCondition, MortarReading } from '../mortar/mortar.ts'
import { replacedReadings } from '../mortar/retests.ts'
import type { ResultReason } from '../result/reason.ts'
import { type TestedSpecimens, testedSpecimens } from './tested-specimens.ts'

export interface JudgedReading<Reading extends MortarReading = MortarReading> {
  readonly reading: Reading
  readonly specimens: TestedSpecimens
  readonly valid: boolean
  readonly reasons: readonly ResultReason[]
}

/** Readings that were taken by the as-of date; the others are planned. */
export function readingsTakenBy<Reading extends MortarReading>(
  asOf: string,
  readings: readonly Reading[] | undefined,
): Reading[] {
  return (readings ?? []).filter(
    ({ tested, specimens, mean }) =>
      tested !== undefined && dateOf(tested) <= asOf && (specimens !== undefined || mean !== undefined),
  )
}

/**
 * @param mortar test or control, made and cured as its condition says
 * @param asOf calendar date; readings taken later are left out
 * @returns one for each reading taken, in the order of the record
 */
export function judgedReadings<Reading extends MortarReading>(
  measurement: MortarMeasurement<Reading>,
  mortar: Mortar,
  condition: MortarCondition,
  asOf: string,
): JudgedReading<Reading>[] {
  const readings = readingsTakenBy(asOf, measurement.readingsOf(mortar))
  const replaced = replacedReadings(readings)
  return readings.map((reading) => {
    const specimens = testedSpecimens(measurement, reading, condition)
    const age = ageReasons(mortar.cast, reading, condition)
    const notes = measurement.readingNotes?.(reading, condition) ?? []
    const faults = [
      ...(measurement.readingFaults?.(reading, condition) ?? []),
      ...replacement(replaced.get(reading)),
    ]
    return {
      reading,
      specimens,
      valid: specimens.valid && age.valid && faults.length === 0,
      reasons: [...specimens.reasons, ...age.reasons, ...notes, ...faults],
    }
  })
}

function replacement(retested: string | undefined): ResultReason[] {
  return retested === undefined ? [] : [{ code: 'replaced-by-retest', params: { retested } }]
}

/** The last valid reading of an age. */
export function validReadingAt<Reading extends MortarReading>(
  readings: readonly JudgedReading<Reading>[],
  age: string,
): JudgedReading<Reading> | undefined {
  return readings.findLast(({ valid, reading }) => valid && reading.age === age)
}

/** The reading that stands for its mortar at an age: a valid one before one that is not, the last of several. */
export function readingAt<Reading extends MortarReading>(
  readings: readonly JudgedReading<Reading>[],
  age: string,
): JudgedReading<Reading> | undefined {
  return validReadingAt(readings, age) ?? readings.findLast(({ reading }) => reading.age === age)
}
