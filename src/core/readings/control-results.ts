/** The means of a control batch at each age. */
import type { Moment } from '../measure/moment.ts'
import type { MortarMeasurement } from '../mortar/mortar-measurement.ts'
import type { Quantity } from '../measure/units.ts'
import type { ControlMortar, MortarCondition } from '../mortar/mortar.ts'
import { withMould } from '../mortar/moulds.ts'
import { isMade, type Result } from '../result/result.ts'
import { controlReadings } from './control-readings.ts'
import { meanResult, type OfMortar } from './mean-result.ts'
import { MORTAR_MEASUREMENTS } from './mortar-measurements.ts'

export interface ControlBatch {
  readonly id: string
  readonly control: ControlMortar
  readonly condition: MortarCondition
  /** Calendar date; readings taken later are left out. */
  readonly asOf: Moment
  /** Side of the laboratory's cubes; the control's own goes before it. */
  readonly mould?: Quantity
}

/** One result for each reading that gives a value, measurement by measurement in the order of the record. */
export function controlResults(
  { id, control, condition: asked, asOf, mould }: ControlBatch,
  measurements: readonly MortarMeasurement[] = MORTAR_MEASUREMENTS,
): Result[] {
  const condition = withMould(asked, control.mould ?? mould)
  const ofControl: OfMortar = {
    condition: control.condition,
    laboratory: control.laboratory,
    sample: id,
    sampleKind: 'control',
    role: 'control',
  }
  return measurements
    .flatMap((measurement) =>
      controlReadings(measurement, control, condition, asOf).map((read) =>
        meanResult(measurement, read, ofControl),
      ),
    )
    .filter(isMade)
}
