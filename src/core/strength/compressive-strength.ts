/** Compressive strength of mortar specimens: load over area. */
import { crossSectionMm2 } from '../mortar/cross-section.ts'
import type { MortarMeasurement, SpecimenValue } from '../mortar/mortar-measurement.ts'
import {
  type CrushedSpecimen,
  isQuantity,
  type SpecimenShape,
  type StrengthReading,
  type StrengthSpecimen,
} from '../mortar/mortar.ts'
import type { Quantity } from '../measure/units.ts'
import { strengthInterval } from '../statistics/ratio-interval.ts'
import { activityIndex } from './activity-index.ts'

/**
 * Compressive strength: load over area.
 * @param loadKN largest load, kN
 * @param areaMm2 loaded area, mm², above zero
 * @returns MPa, unrounded
 * Source: definition (also of ASTM C109, from memory).
 */
export function strengthMPa(loadKN: number, areaMm2: number): number {
  // 1 MPa = 1 N/mm².
  return (1000 * loadKN) / areaMm2
}

/** The test that gives the strength activity index. */
export const COMPRESSIVE_STRENGTH: MortarMeasurement<StrengthReading> = {
  property: 'compressive-strength',
  index: 'strength-activity-index',
  workingDecimals: 2,
  readingsOf: ({ strength }) => strength,
  specimenOf: (specimen, _reading, { strength }) => specimenStrength(specimen, strength?.specimen),
  valueUnknown: { code: 'loaded-area-unknown', params: {} },
  rangeRulesOf: ({ strength }) => strength?.['batch-range'] ?? [],
  specimenCountOf: ({ strength }) => strength?.specimens,
  ratioOf: activityIndex,
  ratioSource: 'ASTM C311, index = 100 A/B (from memory)',
  intervalOf: strengthInterval,
}

/**
 * What one specimen's reading gives.
 * @param shape nominal shape of the condition; sizes measured on the specimen go before it
 * @returns MPa: a stated strength as it is, else load over area; null without a reading or an area
 */
export function specimenStrength(
  specimen: StrengthSpecimen,
  shape: SpecimenShape | undefined,
): SpecimenValue {
  const { load, strength, ...sizes }: CrushedSpecimen = isQuantity(specimen) ? byUnit(specimen) : specimen
  if (load === undefined)
    return { value: strength?.value ?? null, written: strength?.written ?? null, terms: [] }
  const areaMm2 = crossSectionMm2(shape, sizes)
  if (areaMm2 === null) return { value: null, written: load.written, terms: [] }
  return {
    value: strengthMPa(load.value, areaMm2),
    written: load.written,
    terms: [{ does: 'divided-by', value: areaMm2, unit: 'mm2' }],
  }
}

function byUnit(quantity: Quantity): CrushedSpecimen {
  return quantity.kind === 'force' ? { load: quantity } : { strength: quantity }
}
