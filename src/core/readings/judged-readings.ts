/** The readings of one mortar, each with what makes it unfit or is worth a note. */
import { type Age, isSameAge } from '../measure/age.ts'
import { isBy, type Moment } from '../measure/moment.ts'
import { ageReasons } from '../mortar/age-tolerance.ts'
import type { MortarMeasurement } from '../mortar/mortar-measurement.ts'
import type { Mortar, MortarCondition, MortarReading } from '../mortar/mortar.ts'
import { knownFrom } from '../mortar/known-when.ts'
import { byTest, replacedReadings } from '../mortar/retests.ts'
import type { ResultReason } from '../result/reason.ts'
import { type TestedSpecimens, testedSpecimens } from './tested-specimens.ts'

export interface JudgedReading<Reading extends MortarReading = MortarReading> {
  readonly reading: TakenReading<Reading>
  readonly specimens: TestedSpecimens
  readonly valid: boolean
  readonly reasons: readonly ResultReason[]
}

/** A reading that was taken: its moment is on record. */
export type TakenReading<Reading extends MortarReading = MortarReading> = Reading & {
  readonly tested: Moment
}

/** Readings that were known by the as-of date; the others are planned. */
export function readingsTakenBy<Reading extends MortarReading>(
  asOf: Moment,
  readings: readonly Reading[] | undefined,
): TakenReading<Reading>[] {
  return (readings ?? []).filter(
    (reading): reading is TakenReading<Reading> =>
      reading.tested !== undefined &&
      isBy(knownFrom({ ...reading, tested: reading.tested }), asOf) &&
      (reading.specimens !== undefined || reading.mean !== undefined),
  )
}

/**
 * The readings of one mortar, judged.
 * @param mortar test or control, made and cured as its condition says
 * @param asOf calendar date; what became known later is left out
 * @returns one for each reading taken, in the order of the record
 */
export function judgedReadings<Reading extends MortarReading>(
  measurement: MortarMeasurement<Reading>,
  mortar: Mortar,
  condition: MortarCondition,
  asOf: Moment,
): JudgedReading<Reading>[] {
  const readings = readingsTakenBy(asOf, measurement.readingsOf(mortar))
  const replaced = replacedReadings(readings)
  return readings.map((reading) => {
    const specimens = testedSpecimens(measurement, reading, condition, asOf)
    const age = ageReasons(mortar.cast, reading, condition)
    const notes = [
      ...(measurement.readingNotes?.(reading, condition) ?? []),
      ...(measurement.historyNotes?.(reading, readings, condition) ?? []),
    ]
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

function replacement(retested: Moment | undefined): ResultReason[] {
  return retested === undefined ? [] : [{ code: 'replaced-by-retest', params: { retested: retested.text } }]
}

/** The last valid reading of an age, by the moment of its test; undefined without one. */
export function validReadingAt<Reading extends MortarReading>(
  readings: readonly JudgedReading<Reading>[],
  age: Age,
): JudgedReading<Reading> | undefined {
  return lastTested(readings.filter(({ valid, reading }) => valid && isSameAge(reading.age, age)))
}

/**
 * The reading that stands for its mortar at an age: a valid one before one that is not, the last of several by the
 * moment of its test; undefined without one.
 */
export function readingAt<Reading extends MortarReading>(
  readings: readonly JudgedReading<Reading>[],
  age: Age,
): JudgedReading<Reading> | undefined {
  return (
    validReadingAt(readings, age) ?? lastTested(readings.filter(({ reading }) => isSameAge(reading.age, age)))
  )
}

function lastTested<Reading extends MortarReading>(
  readings: readonly JudgedReading<Reading>[],
): JudgedReading<Reading> | undefined {
  return readings.toSorted((a, b) => byTest(a.reading, b.reading)).at(-1)
}
