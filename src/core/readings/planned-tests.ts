/** Tests that are cast and listed in the record but have no reading by the as-of date. */
import { addHours, ageHours, dateOf } from '../measure/moment.ts'
import type { PropertyKey } from '../measure/properties.ts'
import type { MortarMeasurement } from '../mortar/mortar-measurement.ts'
import {
  type ControlMortar,
  kindOfSample,
  type LotEvidence,
  type MortarCondition,
  type TestMortar,
} from '../mortar/mortar.ts'
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
  if (condition === undefined || lot.asOf < dateOf(test.cast)) return []
  const control = lot.controls.get(test.control)
  return measurements.flatMap((measurement) =>
    awaited(measurement, test, control, lot.asOf).map((result) => plannedTest(result, test, condition, lot)),
  )
}

interface Awaited {
  readonly property: PropertyKey
  readonly age: string
}

/** Both the mean and the index at each age listed; where only the control's reading is missing, the index alone. */
function awaited(
  measurement: MortarMeasurement,
  test: TestMortar,
  control: ControlMortar | undefined,
  asOf: string,
): Awaited[] {
  const { property, index } = measurement
  const own = measurement.readingsOf(test) ?? []
  const ownAges = agesTaken(measurement, test, asOf)
  const controlAges = control === undefined ? new Set() : agesTaken(measurement, control, asOf)
  return [...new Set(own.map(({ age }) => age))].flatMap((age): Awaited[] => {
    if (!ownAges.has(age))
      return [
        { property, age },
        { property: index, age },
      ]
    return controlAges.has(age) ? [] : [{ property: index, age }]
  })
}

function agesTaken(
  measurement: MortarMeasurement,
  mortar: TestMortar | ControlMortar,
  asOf: string,
): ReadonlySet<string> {
  return new Set(readingsTakenBy(asOf, measurement.readingsOf(mortar)).map(({ age }) => age))
}

function plannedTest(
  { property, age }: Awaited,
  test: TestMortar,
  condition: MortarCondition,
  lot: LotEvidence,
): PlannedTest {
  const tolerance = condition.ages.find((entry) => entry.age === age)?.within.value ?? 0
  const awaitedUntil = addHours(test.cast, ageHours(age) + tolerance + lot.graceHours)
  return {
    property,
    condition: test.condition,
    age,
    laboratory: test.laboratory,
    sample: test.sample,
    sampleKind: kindOfSample(test.sample, lot),
    begun: test.cast,
    due: addHours(test.cast, ageHours(age)),
    ...(awaitedUntil < lot.asOf ? { overdueSince: awaitedUntil } : {}),
  }
}
