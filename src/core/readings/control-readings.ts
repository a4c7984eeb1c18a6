/** The readings of a control batch, judged once for all lots that are held against it. */
import type { Moment } from '../measure/moment.ts'
import type { MortarMeasurement } from '../mortar/mortar-measurement.ts'
import type { ControlMortar, MortarCondition, MortarReading } from '../mortar/mortar.ts'
import { type JudgedReading, judgedReadings } from './judged-readings.ts'

interface Kept {
  readonly condition: MortarCondition
  readonly asOf: Moment
  readonly byMeasurement: Map<MortarMeasurement, readonly JudgedReading[]>
}

/** The last answers for each batch: they depend on the record alone, so they go when the record goes. */
const kept = new WeakMap<ControlMortar, Kept>()

/**
 * The readings of a control batch, judged.
 * @param condition of the test mortar
 * @param asOf calendar date; readings taken later are left out
 * @returns one for each reading taken, in the order of the record
 * Note: dozens of lots share a batch, and judging its readings anew for each would be half of all the
 * computing.
 */
export function controlReadings<Reading extends MortarReading>(
  measurement: MortarMeasurement<Reading>,
  control: ControlMortar,
  condition: MortarCondition,
  asOf: Moment,
): readonly JudgedReading<Reading>[] {
  const { byMeasurement } = keptFor(control, condition, asOf)
  const before = byMeasurement.get(measurement)
  // A measurement's readings are only ever put in under itself.
  if (before !== undefined) return before as readonly JudgedReading<Reading>[]
  const readings = judgedReadings(measurement, control, condition, asOf)
  byMeasurement.set(measurement, readings)
  return readings
}

function keptFor(control: ControlMortar, condition: MortarCondition, asOf: Moment): Kept {
  const before = kept.get(control)
  if (before?.condition === condition && before.asOf.day === asOf.day) return before
  const fresh = { condition, asOf, byMeasurement: new Map() }
  kept.set(control, fresh)
  return fresh
}
