/** A test mortar against its control: the mean of each measurement, its index, and the water requirement. */
import { defined } from '../measure/defined.ts'
import { isBy } from '../measure/moment.ts'
import type { Quantity } from '../measure/units.ts'
import type { MortarMeasurement } from '../mortar/mortar-measurement.ts'
import { type LotEvidence, type Mortar, roleOf, sampleOf, type TestMortar } from '../mortar/mortar.ts'
import { withMould } from '../mortar/moulds.ts'
import { controlOf } from '../mortar/stated-control.ts'
import { isMade, type Result, type UnmadeResult } from '../result/result.ts'
import { controlReadings } from './control-readings.ts'
import { indexResult, type MortarPair } from './index-result.ts'
import { judgedReadings, readingAt } from './judged-readings.ts'
import { meanResult, type OfMortar } from './mean-result.ts'
import { MORTAR_MEASUREMENTS } from './mortar-measurements.ts'
import { boundsOfMean, type TestedSpecimens } from './tested-specimens.ts'
import { waterResults } from './water-result.ts'

/**
 * All results of one test mortar, and tests of it that gave no value; none where its condition or control is
 * not on record.
 */
export function mortarResults(
  test: TestMortar,
  lot: LotEvidence,
  measurements: readonly MortarMeasurement[] = MORTAR_MEASUREMENTS,
): (Result | UnmadeResult)[] {
  const asked = lot.conditions.get(test.condition)
  const control = controlOf(test, lot)
  if (asked === undefined || !isBy(test.cast, lot.asOf)) return []
  // A batch that is named and not on record is a fault of its own; without any the means stand alone.
  if (control === undefined && test.control !== undefined) return []
  const condition = withMould(asked, mouldOf(test, lot))
  const ofTest: OfMortar = {
    condition: test.condition,
    laboratory: test.laboratory,
    sample: test.sample,
    ...sampleOf(test.sample, lot),
    role: roleOf(test.sample, lot),
    begun: test.cast,
  }
  if (control === undefined)
    return measurements.flatMap((measurement) => meansAlone(measurement, { test, condition, lot, ofTest }))
  const controlCondition = withMould(lot.conditions.get(control.condition) ?? asked, mouldOf(control, lot))
  const pair = { test, control, condition, controlCondition, lot, ofTest }
  return [...measurements.flatMap((measurement) => measuredResults(measurement, pair)), ...waterResults(pair)]
}

function mouldOf({ mould, laboratory, cast }: Mortar, lot: LotEvidence): Quantity | undefined {
  return mould ?? lot.mouldOf?.(laboratory, cast)
}

/** Without a control there is nothing to divide by. */
function meansAlone(
  measurement: MortarMeasurement,
  { test, condition, lot, ofTest }: Pick<MortarPair, 'test' | 'condition' | 'lot' | 'ofTest'>,
): (Result | UnmadeResult)[] {
  return judgedReadings(measurement, test, condition, lot.asOf).map((own) => {
    const method = lot.methodOf(test.laboratory, measurement.property, own.reading.tested)
    return meanResult(measurement, own, { ...ofTest, method })
  })
}

/** For each reading of the test mortar its mean, and its index where the control was read at that age. */
function measuredResults(measurement: MortarMeasurement, pair: MortarPair): (Result | UnmadeResult)[] {
  const { test, control, condition, controlCondition, lot, ofTest } = pair
  const controls = controlReadings(measurement, control, controlCondition, lot.asOf)
  return judgedReadings(measurement, test, condition, lot.asOf).flatMap((own) => {
    const against = readingAt(controls, own.reading.age)
    const method = lot.methodOf(test.laboratory, measurement.property, own.reading.tested)
    const mean = meanResult(measurement, own, { ...ofTest, method })
    return against === undefined
      ? [mean]
      : [withControl(mean, against.specimens), indexResult(measurement, pair, own, against)]
  })
}

/** The control's mean beside the test's own, for clauses on their difference. */
function withControl(result: Result | UnmadeResult, control: TestedSpecimens): Result | UnmadeResult {
  return control.mean === null || !isMade(result)
    ? result
    : { ...result, controlValue: control.mean, ...defined({ controlBounds: boundsOfMean(control) }) }
}
