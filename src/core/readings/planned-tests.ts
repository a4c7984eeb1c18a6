/** Tests that are cast and listed in the record but have no reading by the as-of date. */
import { taken } from './control-results.ts'
import { addHours, ageHours, dateOf } from '../measure/moment.ts'
import { kindOfSample, type LotEvidence, type MortarCondition, type TestMortar } from '../mortar/mortar.ts'
import type { PropertyKey } from '../measure/properties.ts'
import type { PlannedTest } from '../result/result.ts'

const STRENGTH: readonly PropertyKey[] = ['compressive-strength', 'strength-activity-index']
const RESISTIVITY: readonly PropertyKey[] = ['bulk-resistivity', 'resistivity-index']

/** Planned results of one mortar, cast by the as-of date. */
export function plannedTests(test: TestMortar, lot: LotEvidence): PlannedTest[] {
  const condition = lot.conditions.get(test.condition)
  if (condition === undefined || lot.asOf < dateOf(test.cast)) return []
  const control = lot.controls.get(test.control)
  return [
    ...agesAwaited(test.strength, control?.strength, lot.asOf).flatMap(({ age, properties }) =>
      planned(properties(STRENGTH), age, test, condition, lot),
    ),
    ...agesAwaited(test.resistivity, control?.resistivity, lot.asOf).flatMap(({ age, properties }) =>
      planned(properties(RESISTIVITY), age, test, condition, lot),
    ),
  ]
}

type Readings = readonly {
  readonly age: string
  readonly tested?: string
  readonly specimens?: object
  readonly mean?: unknown
}[]

/** Both the mean and the index are awaited; where only the control's reading is missing, the index alone. */
function agesAwaited(
  own: Readings | undefined,
  control: Readings | undefined,
  asOf: string,
): { age: string; properties: (keys: readonly PropertyKey[]) => readonly PropertyKey[] }[] {
  const has = (readings: Readings | undefined, age: string) =>
    taken(readings, asOf).some((reading) => reading.age === age)
  return [...new Set((own ?? []).map((reading) => reading.age))].flatMap((age) => {
    if (!has(own, age)) return [{ age, properties: (keys: readonly PropertyKey[]) => keys }]
    return has(control, age) ? [] : [{ age, properties: (keys: readonly PropertyKey[]) => keys.slice(1) }]
  })
}

function planned(
  properties: readonly PropertyKey[],
  age: string,
  test: TestMortar,
  condition: MortarCondition,
  lot: LotEvidence,
): PlannedTest[] {
  const due = addHours(test.cast, ageHours(age))
  const tolerance = condition.ages.find((entry) => entry.age === age)?.within.value ?? 0
  const awaitedUntil = addHours(test.cast, ageHours(age) + tolerance + lot.graceHours)
  return properties.map((property) => ({
    property,
    condition: test.condition,
    age,
    laboratory: test.laboratory,
    sample: test.sample,
    sampleKind: kindOfSample(test.sample, lot),
    begun: test.cast,
    due,
    ...(awaitedUntil < lot.asOf ? { overdueSince: awaitedUntil } : {}),
  }))
}
