/** Tests that are cast and listed in the record but have no reading by the as-of date. */
import { type Age, isSameAge } from '../measure/age.ts'
import { addHours, isBy, type Moment } from '../measure/moment.ts'
import type { MortarMeasurement } from '../mortar/mortar-measurement.ts'
import {
  type ControlMortar,
  type LotEvidence,
  type MortarCondition,
  type MortarReading,
  sampleOf,
  type TestMortar,
} from '../mortar/mortar.ts'
import { controlOf } from '../mortar/stated-control.ts'
import type { PlannedTest } from '../result/result.ts'
import { readingsTakenBy } from './judged-readings.ts'
import { MORTAR_MEASUREMENTS } from './mortar-measurements.ts'

/** Planned results of one mortar, cast by the as-of date. */
export function plannedTests(
  test: TestMortar,
  lot: LotEvidence,
  measurements: readonly MortarMeasurement[] = MORTAR_MEASUREMENTS,
): PlannedTest[] {
  const condition = lot.conditions.get(test.condition)
  if (condition === undefined || !isBy(test.cast, lot.asOf)) return []
  const control = controlOf(test, lot)
  return measurements.flatMap((measurement) =>
    awaited(measurement, test, control, lot.asOf).map((result) => plannedTest(result, test, condition, lot)),
  )
}

type Awaited = Pick<PlannedTest, 'property' | 'age' | 'unread'>

/** Both the mean and the index at each age listed; where only the control's reading is missing, the index alone. */
function awaited(
  measurement: MortarMeasurement,
  test: TestMortar,
  control: ControlMortar | undefined,
  asOf: Moment,
): Awaited[] {
  const { property, index } = measurement
  const ownAges = hoursTaken(measurement, test, asOf)
  const controlAges = control === undefined ? new Set() : hoursTaken(measurement, control, asOf)
  return agesOf(measurement.readingsOf(test) ?? []).flatMap((age): Awaited[] => {
    const isControlRead = controlAges.has(age.hours)
    // Where no control is on record, nobody will read one.
    const ofIndex = isControlRead ? 'lot' : test.control === undefined ? 'result' : 'both'
    if (!ownAges.has(age.hours))
      return [
        { property, age, unread: 'lot' },
        { property: index, age, unread: ofIndex },
      ]
    return isControlRead || test.control === undefined ? [] : [{ property: index, age, unread: 'control' }]
  })
}

/** Each age once, in the order of the record. */
function agesOf(readings: readonly MortarReading[]): Age[] {
  return [...new Map(readings.map(({ age }) => [age.hours, age])).values()]
}

/** Ages at which a reading was taken, as hours. */
function hoursTaken(
  measurement: MortarMeasurement,
  mortar: TestMortar | ControlMortar,
  asOf: Moment,
): ReadonlySet<number> {
  return new Set(readingsTakenBy(asOf, measurement.readingsOf(mortar)).map(({ age }) => age.hours))
}

function plannedTest(
  { property, age, unread }: Awaited,
  test: TestMortar,
  condition: MortarCondition,
  lot: LotEvidence,
): PlannedTest {
  const tolerance = condition.ages.find((entry) => isSameAge(entry.age, age))?.within.value ?? 0
  const awaitedUntil = addHours(test.cast, age.hours + tolerance + lot.graceHours)
  const firstDayLate = addHours(awaitedUntil, 24)
  return {
    property,
    condition: test.condition,
    age,
    unread,
    laboratory: test.laboratory,
    sample: test.sample,
    ...sampleOf(test.sample, lot),
    begun: test.cast,
    due: addHours(test.cast, age.hours),
    ...(isBy(firstDayLate, lot.asOf) ? { overdueSince: firstDayLate } : {}),
  }
}
