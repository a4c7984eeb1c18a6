/** The test that gives the resistivity index. */
import type { MortarMeasurement } from '../mortar/mortar-measurement.ts'
import type { MortarCondition, ResistivityReading } from '../mortar/mortar.ts'
import type { WorkingStep } from '../result/working.ts'
import { resistivityInterval } from '../statistics/ratio-interval.ts'
import { atTemperature, specimenResistivity, USUAL_ACTIVATION_ENERGY } from './bulk-resistivity.ts'
import { readingFaults, temperaturesApart } from './reading-faults.ts'
import { handledApart, historyNotes, readingNotes } from './reading-notes.ts'
import { resistivityIndex } from './resistivity-index.ts'

export const BULK_RESISTIVITY: MortarMeasurement<ResistivityReading> = {
  property: 'bulk-resistivity',
  index: 'resistivity-index',
  workingDecimals: 2,
  readingsOf: ({ resistivity }) => resistivity,
  specimenOf: (specimen, reading, { resistivity }) =>
    specimenResistivity(specimen, resistivity?.specimen, reading['end-contact']?.value ?? 0),
  specimenCountOf: ({ resistivity }) => resistivity?.specimens,
  valueUnknown: { code: 'geometry-unknown', params: {} },
  readingFaults,
  readingNotes,
  historyNotes,
  pairNotes: handledApart,
  pairFaults: temperaturesApart,
  ratioOf: resistivityIndex,
  ratioSource: 'ratio of the means, same condition and age',
  intervalOf: resistivityInterval,
  meanNotes: atAskedTemperature,
}

/**
 * Nearer than this, a reading counts as taken at the temperature asked for: half of the last digit printed.
 */
const SAME_TEMPERATURE_CELSIUS = 0.05

/**
 * What the mean would be at the condition's temperature, for information; empty where it was read there.
 * @param mean bulk resistivity, ohm m
 */
export function atAskedTemperature(
  mean: number,
  { temperature }: Pick<ResistivityReading, 'temperature'>,
  { resistivity: asked }: Pick<MortarCondition, 'resistivity'>,
): WorkingStep[] {
  if (asked === undefined || temperature === undefined) return []
  const [readAt, wanted] = [temperature.value, asked.reading.temperature.value]
  if (Math.abs(readAt - wanted) < SAME_TEMPERATURE_CELSIUS) return []
  const activationEnergy = asked['activation-energy'] ?? USUAL_ACTIVATION_ENERGY
  const value = atTemperature(mean, { readAt, wanted, activationEnergy })
  return [
    {
      step: 'at-another-temperature',
      readCelsius: readAt,
      askedCelsius: wanted,
      activationEnergyKJ: activationEnergy,
      result: { value, unit: 'ohm m', decimals: 1 },
    },
  ]
}
